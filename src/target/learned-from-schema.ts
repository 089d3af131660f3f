import type { Schema } from '../profile/schema.ts';
import { group, oneLine } from '../profile/schema-parts.ts';

const numbers = (description: string): Schema => ({
  type: 'array',
  description,
  minItems: 3,
  maxItems: 500,
  items: { type: 'integer', minimum: 1 },
});

const count = (description: string): Schema => ({ type: 'integer', description, minimum: 0 });

const level = (description: string): Schema => ({
  type: 'number',
  description,
  minimum: 0,
  maximum: 1,
});

const LANDMARK: Schema = group(
  {
    landmark: oneLine('What it is', 30),
    time_s: { type: 'number', description: 'Mean over the reps, seconds after the onset' },
    spread_s: { type: 'number', description: 'Standard deviation between reps', minimum: 0 },
  },
  ['landmark', 'time_s', 'spread_s'],
);

const LEFT_OUT: Schema = group(
  { number: { type: 'integer', minimum: 1 }, reason: oneLine('Why it was left out', 120) },
  ['number', 'reason'],
);

/** Where a learned target comes from: for people to read, it changes nothing. */
export const LEARNED_FROM_SCHEMA: Schema = group(
  {
    source: { enum: ['trace', 'reps'], description: 'Zones of a log, or reps of the history' },
    name: oneLine('The trace, or the target or corner of the reps', 120),
    learned_on: oneLine('Day, for example 2026-11-25', 10),
    zones: numbers('Zones of the trace that were used'),
    reps: numbers('Reps of the history that were used'),
    shown_reps: count('How many of them were shown'),
    hidden_reps: count('How many of them were hidden'),
    first_of_day_reps: count('How many of them were first-of-day reps'),
    left_out: { type: 'array', description: 'What was chosen and not used', items: LEFT_OUT },
    landmarks: { type: 'array', description: 'What the reps were registered by', items: LANDMARK },
    smoothing_criterion: oneLine('By what the smoothing was chosen', 200),
    smoothing_half_height_hz: {
      type: 'number',
      description: 'Frequency that comes through at half its height',
      exclusiveMinimum: 0,
    },
    smoothing_miss_level: level('By how much the mean of the others misses a rep, rms'),
    spread_level: level('Spread between registered reps over the release'),
    over_time_spread_level: level(
      'Spread between the same reps with only their onsets at one place',
    ),
    corridor: oneLine('How the corridor was made', 200),
  },
  [
    'source',
    'name',
    'learned_on',
    'landmarks',
    'smoothing_criterion',
    'smoothing_half_height_hz',
    'smoothing_miss_level',
    'spread_level',
    'over_time_spread_level',
    'corridor',
  ],
);
