import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { PHASE } from './diagnosis-answer.ts';
import { outcomeAnswer } from './outcome-answer.ts';

const BRAKE: AnswerFields = {
  brake: json.oneOfWords(
    'the signal that braking is judged by',
    'brake-front',
    'brake-rear',
    'pedal-force',
    'brake-level',
  ),
};

const TARGET: AnswerFields = {
  target: json.text('id of the target'),
  target_version: json.text('hash of its curve'),
};

const NUMBER: AnswerFields = json.wholes({ number: 'number of the zone, or identity of the rep' });

/** `trace import --json`. */
export const TRACE_IMPORT_ANSWER: AnswerSchema = json.object(
  'A log that was cut into braking zones',
  {
    trace: json.text('its name here'),
    source: json.text('path of the file'),
    ...json.wholes({ rows_count: 'rows read', zones_count: 'braking zones found' }),
    ...json.numbers({ duration_s: 'length of the log', step_s: 'usual step between rows' }),
    ...BRAKE,
    steering_positive: json.orNull(json.text('the side to which the log counts steering')),
    columns: json.list(
      'what was read',
      json.object('One column', {
        role: json.text('what it was read as'),
        ...json.wholes({ column: 'its place, from 1' }),
        name: json.text('its heading'),
        unit: json.text('its unit; empty where none was given'),
      }),
    ),
    notices: json.list(
      'what was repaired or left out',
      json.object('One thing', {
        what: json.text('what it was'),
        ...json.wholes({ count: 'how often' }),
        ...json.wholesOrNull({ line: 'line of the file where it was first' }),
      }),
    ),
  },
);

const ZONE = json.object('One braking zone; key points from where the brake goes on', {
  ...json.wholes({ zone: 'its number' }),
  ...json.wholesOrNull({ lap: 'its lap' }),
  ...json.wholes({ line: 'its first line in the file' }),
  ...json.numbers({ start_s: 'when it begins in the log' }),
  ...json.numbersOrNull({
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
  ...json.wholes({ gaps_count: 'gaps in the record' }),
  ...json.numbersOrNull({
    speed_lost_mps: 'speed lost by the speed signal',
    integrated_speed_lost_mps: 'speed lost by the integrated deceleration',
  }),
  speed_plausible: json.orNull({ type: 'boolean', description: 'both agree' }),
});

/** `trace zones --json`. */
export const TRACE_ZONES_ANSWER: AnswerSchema = json.eitherOf(
  'Imported logs, or the braking zones of one',
  json.object('Without a name: the logs', { traces: json.texts('their names') }),
  json.object('With a name: its zones', {
    trace: json.text('its name'),
    ...BRAKE,
    zones: json.list('in the order of the log', ZONE),
  }),
);

/** `score --json`. */
export const SCORE_ANSWER: AnswerSchema = json.eitherOf(
  'One rep from a CSV file against a target',
  ...outcomeAnswer('Outcome', { ...TARGET, trace: json.text('path of the file') }),
);

/** `trace score --json`. */
export const TRACE_SCORE_ANSWER: AnswerSchema = json.eitherOf(
  'A logged braking zone against a target',
  ...outcomeAnswer('Outcome', {
    ...TARGET,
    trace: json.text('name of the log'),
    ...json.wholes({ zone: 'number of the zone' }),
  }),
);

const LEFT_OUT = json.object('One of them', { ...NUMBER, reason: json.text('why') });

const mean = (what: string): AnswerSchema =>
  json.orNull(json.list(`${what} (0 to 1 of full scale)`, { type: 'number' }));

/** `trace compare --json`. */
export const TRACE_COMPARE_ANSWER: AnswerSchema = json.object(
  'Logged braking zones against reps on the rig: car less rig',
  {
    trace: json.text('name of the log'),
    ...TARGET,
    ...BRAKE,
    method: json.text('how differences and intervals come about'),
    rig_reps: json.list('identities of the reps', { type: 'integer' }),
    zones: json.list('numbers of the zones', { type: 'integer' }),
    left_out_reps: json.list('reps that cannot be compared', LEFT_OUT),
    left_out_zones: json.list('zones that cannot be compared', LEFT_OUT),
    phases: json.list(
      'in the order of the zone',
      json.object('One phase', {
        phase: PHASE,
        verdict: json.oneOfWords('what came of it', 'carried over', 'not', 'not driven', 'open'),
        ...json.numbersOrNull({ difference_level: 'level in the car less on the rig' }),
        ...json.intervals({ difference_level_interval: 'of that' }),
        ...json.numbersOrNull({
          margin_level: 'half width of the corridor there',
          rig_spread_level: 'spread on the rig',
          car_spread_level: 'spread in the car',
        }),
      }),
    ),
    key_points: json.list(
      'in the order of the zone',
      json.object('One key point', {
        key_point: json.text('which'),
        ...json.numbersOrNull({ difference_s: 'in the car less on the rig, late is positive' }),
        ...json.intervals({ difference_s_interval: 'of that' }),
      }),
    ),
    ...json.numbersOrNull({
      force_ratio: 'plateau in the car against the rig, at the full scale given',
    }),
    ...json.intervals({ force_ratio_interval: 'of that' }),
    curves: json.object('Curves over equal steps of time', {
      ...json.numbers({ from_s: 'first place, from the rise of the target', step_s: 'step' }),
      ...json.columns({ target_level: 'the target' }),
      rig_mean_level: mean('mean of the reps'),
      car_mean_level: mean('mean of the zones'),
    }),
    ...json.numbersOrNull({
      level_one_pressure_bar: 'line pressure in the car that stands for level 1',
      level_one_pedal_force_n: 'pedal force in the car that stands for level 1',
      level_one_level: 'level in the car that stands for level 1',
    }),
    rig: json.text('what the reps are, in words'),
    not_compared: json.texts('what nobody can compare here'),
    cautions: json.texts('what to mind'),
  },
);
