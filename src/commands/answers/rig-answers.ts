import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

const ROLE = json.oneOfWords('what an axis is used for', 'brake', 'throttle', 'clutch', 'steering');

const FIELD: AnswerFields = json.wholes({
  report_id: 'of the report it is in, 0 without',
  bit_offset: 'first bit, after the byte of the report id',
  bit_size: 'bits',
});

const AXIS = json.object('One axis', {
  usage: json.text('name of its usage'),
  ...FIELD,
  ...json.wholes({ logical_min_counts: 'least described', logical_max_counts: 'most described' }),
  roles: json.list('what the rig uses it for', ROLE),
});

/** `rig list --json`. */
export const RIG_LIST_ANSWER: AnswerSchema = json.object('What is plugged in', {
  devices: json.list(
    'as they were found',
    json.object('One device', {
      name: json.text('its name'),
      maker: json.text('its maker; empty where it says none'),
      ...json.wholes({ vendor_id: 'of its maker', product_id: 'of the product' }),
      serial: json.orNull(json.text('its serial number')),
      ...json.wholesOrNull({ interface: 'number of the interface' }),
      path: json.text('path by which it is opened'),
      kind: json.oneOfWords('what it is', 'rig', 'desk', 'other'),
      problem: json.orNull(json.text('why it cannot be opened')),
      has_descriptor: json.flag('its report descriptor could be read'),
      axes: json.list('in the order of its reports', AXIS),
      ...json.wholes({ buttons: 'how many buttons' }),
      learnt_roles: json.list('roles of fields that it does not describe', ROLE),
    }),
  ),
});

const AXIS_READING = json.object('One axis; a wheel has an angle, a pedal a level', {
  role: ROLE,
  ...json.numbersOrNull({
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
  ...json.numbers({
    at_full_s: 'time at full scale',
    beyond_full_counts: 'beyond full scale',
    at_limit_s: 'time at the end of its range',
  }),
  ...json.numbersOrNull({
    off_rest_counts: 'off the calibrated rest',
    drift_counts: 'end at rest less start at rest',
    newtons_per_count: 'of a pedal with known loads',
    measured_every_ms: 'between two new values',
  }),
});

/** `rig check --json`. */
export const RIG_CHECK_ANSWER: AnswerSchema = json.object('How well the rig reports', {
  ...json.numbers({ elapsed_s: 'time watched' }),
  ...json.wholes({ dropped_reports: 'reports that the computer lost' }),
  devices: json.list(
    'in their order',
    json.object('One device', {
      name: json.text('its name'),
      connected: json.flag('still there'),
      waiting_for_movement: json.flag('reports only on change, and nothing has moved'),
      streams_at_rest: json.orNull(json.flag('reports without a change')),
      ...json.wholes({ reports: 'reports seen' }),
      ...json.numbersOrNull({
        rate_hz: 'reports a second',
        unique_rate_hz: 'new values a second',
        p99_gap_ms: 'gap between reports that 99 % are under',
        jitter_ms: 'standard deviation of the gaps',
      }),
      ...json.wholes({ gaps: 'gaps much longer than usual' }),
      axes: json.list('in their order', AXIS_READING),
    }),
  ),
  verdicts: json.list(
    'what is to be said',
    json.object('One verdict', {
      device: json.text('of which device'),
      role: json.orNull(ROLE),
      check: json.text('what was looked at'),
      verdict: json.oneOfWords('how it is', 'good', 'limited', 'bad', 'unknown'),
      found: json.text('what was seen'),
      fix: json.orNull(json.text('what to do')),
    }),
  ),
});

const USAGE: AnswerFields = {
  ...json.wholes({ usage_page: 'page of the usage', usage_id: 'within the page' }),
  usage_name: json.text('name by the HID Usage Tables'),
};

const FLAGS = json.object(
  'Flags of the input item',
  Object.fromEntries(
    ['variable', 'relative', 'wrap', 'non_linear', 'no_preferred', 'null_state', 'volatile'].map(
      (name) => [name, json.flag(name.replace('_', ' '))],
    ),
  ),
);

/** `rig decode --json`. */
export const RIG_DECODE_ANSWER: AnswerSchema = json.object('A report descriptor and reports', {
  uses_report_ids: json.flag('reports begin with their id'),
  report_bytes: json.tally('bytes of each report, by its id'),
  applications: json.list('collections at the top', json.object('One usage', USAGE)),
  fields: json.list(
    'input fields in their order',
    json.object('One field', {
      ...json.wholes({ report_id: 'of the report it is in, 0 without' }),
      ...USAGE,
      ...json.wholes({
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
  reports: json.list(
    'reports given, in their order',
    json.object('One report', {
      ...json.wholes({ report_id: 'its id, 0 without' }),
      values: json.list('raw value of each field; null where it has none here', {
        type: ['integer', 'null'],
      }),
    }),
  ),
  warnings: json.texts('what is odd about the descriptor'),
});

/** `doctor --json`. */
export const DOCTOR_ANSWER: AnswerSchema = json.object('What works on this machine', {
  findings: json.list(
    'one after the other',
    json.object('One finding', {
      check: json.text('what was looked at'),
      verdict: json.oneOfWords('how it is', 'works', 'limited', 'broken', 'note'),
      found: json.text('what was seen'),
      fix: json.orNull(json.text('what to do')),
    }),
  ),
});
