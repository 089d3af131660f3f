import {
  flag,
  list,
  numbers,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  tally,
  text,
  texts,
  wholes,
  wholesOrNull,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

const ROLE = oneOfWords('what an axis is used for', 'brake', 'throttle', 'clutch', 'steering');

const FIELD: AnswerFields = wholes({
  report_id: 'of the report it is in, 0 without',
  bit_offset: 'first bit, after the byte of the report id',
  bit_size: 'bits',
});

const AXIS = object('One axis', {
  usage: text('name of its usage'),
  ...FIELD,
  ...wholes({ logical_min_counts: 'least described', logical_max_counts: 'most described' }),
  roles: list('what the rig uses it for', ROLE),
});

/** `rig list --json`. */
export const RIG_LIST_ANSWER: AnswerSchema = object('What is plugged in', {
  devices: list(
    'as they were found',
    object('One device', {
      name: text('its name'),
      maker: text('its maker; empty where it says none'),
      ...wholes({ vendor_id: 'of its maker', product_id: 'of the product' }),
      serial: orNull(text('its serial number')),
      ...wholesOrNull({ interface: 'number of the interface' }),
      path: text('path by which it is opened'),
      kind: oneOfWords('what it is', 'rig', 'desk', 'other'),
      problem: orNull(text('why it cannot be opened')),
      has_descriptor: flag('its report descriptor could be read'),
      axes: list('in the order of its reports', AXIS),
      ...wholes({ buttons: 'how many buttons' }),
      learnt_roles: list('roles of fields that it does not describe', ROLE),
    }),
  ),
});

const AXIS_READING = object('One axis; a wheel has an angle, a pedal a level', {
  role: ROLE,
  ...numbersOrNull({
    counts: 'last value',
    level: 'the same, of a pedal',
    angle_deg: 'the same, of a wheel, left positive',
    min_counts: 'least seen',
    max_counts: 'most seen',
    rest_span_counts: 'span at rest',
    rest_noise_counts: 'standard deviation at rest',
    step_counts: 'smallest step',
    level_per_count: 'of a pedal',
    deg_per_count: 'of a wheel',
  }),
  ...numbers({
    at_full_s: 'time at full scale',
    beyond_full_counts: 'beyond full scale',
    at_limit_s: 'time at the end of its range',
  }),
  ...numbersOrNull({
    off_rest_counts: 'off the calibrated rest',
    drift_counts: 'end at rest less start at rest',
    newtons_per_count: 'of a pedal with known loads',
    measured_every_ms: 'between two new values',
  }),
});

/** `rig check --json`. */
export const RIG_CHECK_ANSWER: AnswerSchema = object('How well the rig reports', {
  ...numbers({ elapsed_s: 'time watched' }),
  ...wholes({ dropped_reports: 'reports that the computer lost' }),
  devices: list(
    'in their order',
    object('One device', {
      name: text('its name'),
      connected: flag('still there'),
      waiting_for_movement: flag('reports only on change, and nothing has moved'),
      streams_at_rest: orNull(flag('reports without a change')),
      ...wholes({ reports: 'reports seen' }),
      ...numbersOrNull({
        rate_hz: 'reports a second',
        unique_rate_hz: 'new values a second',
        p99_gap_ms: 'gap between reports that 99 % are under',
        jitter_ms: 'standard deviation of the gaps',
      }),
      ...wholes({ gaps: 'gaps much longer than usual' }),
      axes: list('in their order', AXIS_READING),
    }),
  ),
  verdicts: list(
    'what is to be said',
    object('One verdict', {
      device: text('of which device'),
      role: orNull(ROLE),
      check: text('what was looked at'),
      verdict: oneOfWords('how it is', 'good', 'limited', 'bad', 'unknown'),
      found: text('what was seen'),
      fix: orNull(text('what to do')),
    }),
  ),
});

const USAGE: AnswerFields = {
  ...wholes({ usage_page: 'page of the usage', usage_id: 'within the page' }),
  usage_name: text('name by the HID Usage Tables'),
};

const FLAGS = object(
  'Flags of the input item',
  Object.fromEntries(
    ['variable', 'relative', 'wrap', 'non_linear', 'no_preferred', 'null_state', 'volatile'].map(
      (name) => [name, flag(name.replace('_', ' '))],
    ),
  ),
);

/** `rig decode --json`. */
export const RIG_DECODE_ANSWER: AnswerSchema = object('A report descriptor and reports', {
  uses_report_ids: flag('reports begin with their id'),
  report_bytes: tally('bytes of each report, by its id'),
  applications: list('collections at the top', object('One usage', USAGE)),
  fields: list(
    'input fields in their order',
    object('One field', {
      ...wholes({ report_id: 'of the report it is in, 0 without' }),
      ...USAGE,
      ...wholes({
        bit_offset: 'first bit, after the byte of the report id',
        bit_size: 'bits',
        logical_min: 'least raw value described',
        logical_max: 'most raw value described',
        physical_min: 'what the least stands for',
        physical_max: 'what the most stands for',
        unit: 'unit of those, as USB HID 1.11 codes it',
        unit_exponent: 'power of ten of those',
      }),
      flags: FLAGS,
    }),
  ),
  reports: list(
    'reports given, in their order',
    object('One report', {
      ...wholes({ report_id: 'its id, 0 without' }),
      values: list('raw value of each field; null where it has none here', {
        type: ['integer', 'null'],
      }),
    }),
  ),
  warnings: texts('what is odd about the descriptor'),
});

/** `doctor --json`. */
export const DOCTOR_ANSWER: AnswerSchema = object('What works on this machine', {
  findings: list(
    'one after the other',
    object('One finding', {
      check: text('what was looked at'),
      verdict: oneOfWords('how it is', 'works', 'limited', 'broken', 'note'),
      found: text('what was seen'),
      fix: orNull(text('what to do')),
    }),
  ),
});
