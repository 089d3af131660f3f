import {
  columns,
  eitherOf,
  intervals,
  list,
  numbers,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  texts,
  wholes,
  wholesOrNull,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { PHASE } from './diagnosis-answer.ts';
import { outcomeAnswer } from './outcome-answer.ts';

const BRAKE: AnswerFields = {
  brake: oneOfWords(
    'the signal that braking is judged by',
    'brake-front',
    'brake-rear',
    'pedal-force',
    'brake-level',
  ),
};

const TARGET: AnswerFields = {
  target: text('id of the target'),
  target_version: text('hash of its curve'),
};

const NUMBER: AnswerFields = wholes({ number: 'number of the zone, or identity of the rep' });

/** `trace import --json`. */
export const TRACE_IMPORT_ANSWER: AnswerSchema = object('A log that was cut into braking zones', {
  trace: text('its name here'),
  source: text('path of the file'),
  ...wholes({ rows_count: 'rows read', zones_count: 'braking zones found' }),
  ...numbers({ duration_s: 'length of the log', step_s: 'usual step between rows' }),
  ...BRAKE,
  steering_positive: orNull(text('the side to which the log counts steering')),
  columns: list(
    'what was read',
    object('One column', {
      role: text('what it was read as'),
      ...wholes({ column: 'its place, from 1' }),
      name: text('its heading'),
      unit: text('its unit; empty where none was given'),
    }),
  ),
  notices: list(
    'what was repaired or left out',
    object('One thing', {
      what: text('what it was'),
      ...wholes({ count: 'how often' }),
      ...wholesOrNull({ line: 'line of the file where it was first' }),
    }),
  ),
});

const ZONE = object('One braking zone; key points from where the brake goes on', {
  ...wholes({ zone: 'its number' }),
  ...wholesOrNull({ lap: 'its lap' }),
  ...wholes({ line: 'its first line in the file' }),
  ...numbers({ start_s: 'when it begins in the log' }),
  ...numbersOrNull({
    entry_speed_mps: 'speed where it begins',
    slowest_speed_mps: 'slowest speed',
    peak_level: 'peak of a brake level',
    peak_pressure_bar: 'peak of a line pressure',
    peak_pedal_force_n: 'peak of a pedal force',
    onset_s: 'brake on',
    near_peak_s: 'near the peak',
    peak_s: 'peak',
    start_of_release_s: 'start of release',
    half_release_s: 'half of the release',
    final_release_s: 'last tenth begins',
    brake_off_s: 'brake off',
  }),
  ...wholes({ gaps_count: 'gaps in the record' }),
  ...numbersOrNull({
    speed_lost_mps: 'speed lost by the speed signal',
    integrated_speed_lost_mps: 'speed lost by the integrated deceleration',
  }),
  speed_plausible: orNull({ type: 'boolean', description: 'both agree' }),
});

/** `trace zones --json`. */
export const TRACE_ZONES_ANSWER: AnswerSchema = eitherOf(
  'Imported logs, or the braking zones of one',
  object('Without a name: the logs', { traces: texts('their names') }),
  object('With a name: its zones', {
    trace: text('its name'),
    ...BRAKE,
    zones: list('in the order of the log', ZONE),
  }),
);

/** `score --json`. */
export const SCORE_ANSWER: AnswerSchema = eitherOf(
  'One rep from a CSV file against a target',
  ...outcomeAnswer('Outcome', { ...TARGET, trace: text('path of the file') }),
);

/** `trace score --json`. */
export const TRACE_SCORE_ANSWER: AnswerSchema = eitherOf(
  'A logged braking zone against a target',
  ...outcomeAnswer('Outcome', {
    ...TARGET,
    trace: text('name of the log'),
    ...wholes({ zone: 'number of the zone' }),
  }),
);

const LEFT_OUT = object('One of them', { ...NUMBER, reason: text('why') });

const mean = (what: string): AnswerSchema =>
  orNull(list(`${what} (0 to 1 of full scale)`, { type: 'number' }));

/** `trace compare --json`. */
export const TRACE_COMPARE_ANSWER: AnswerSchema = object(
  'Logged braking zones against reps on the rig: car less rig',
  {
    trace: text('name of the log'),
    ...TARGET,
    ...BRAKE,
    method: text('how differences and intervals come about'),
    rig_reps: list('identities of the reps', { type: 'integer' }),
    zones: list('numbers of the zones', { type: 'integer' }),
    left_out_reps: list('reps that cannot be compared', LEFT_OUT),
    left_out_zones: list('zones that cannot be compared', LEFT_OUT),
    phases: list(
      'in the order of the zone',
      object('One phase', {
        phase: PHASE,
        verdict: oneOfWords('what came of it', 'carried over', 'not', 'not driven', 'open'),
        ...numbersOrNull({ difference_level: 'level in the car less on the rig' }),
        ...intervals({ difference_level_interval: 'of that' }),
        ...numbersOrNull({
          margin_level: 'half width of the corridor there',
          rig_spread_level: 'spread on the rig',
          car_spread_level: 'spread in the car',
        }),
      }),
    ),
    key_points: list(
      'in the order of the zone',
      object('One key point', {
        key_point: text('which'),
        ...numbersOrNull({ difference_s: 'in the car less on the rig, late is positive' }),
        ...intervals({ difference_s_interval: 'of that' }),
      }),
    ),
    ...numbersOrNull({
      force_ratio: 'plateau in the car against the rig, at the full scale given',
    }),
    ...intervals({ force_ratio_interval: 'of that' }),
    curves: object('Curves over equal steps of time', {
      ...numbers({ from_s: 'first place, from the rise of the target', step_s: 'step' }),
      ...columns({ target_level: 'the target' }),
      rig_mean_level: mean('mean of the reps'),
      car_mean_level: mean('mean of the zones'),
    }),
    ...numbersOrNull({
      level_one_pressure_bar: 'line pressure in the car that stands for level 1',
      level_one_pedal_force_n: 'pedal force in the car that stands for level 1',
      level_one_level: 'level in the car that stands for level 1',
    }),
    rig: text('what the reps are, in words'),
    not_compared: texts('what nobody can compare here'),
    cautions: texts('what to mind'),
  },
);
