/** Last words of a field's name, and the unit that they say it is in. Levels are shares of one's own full scale. */
const UNITS: Readonly<Record<string, string>> = {
  s: 's',
  ms: 'ms',
  m: 'm',
  mm: 'mm',
  kg: 'kg',
  n: 'N',
  lbf: 'lbf',
  bar: 'bar',
  g: 'g, 9.80665 m/s²',
  hz: 'Hz',
  rpm: 'revolutions a minute',
  deg: 'degrees',
  percent: '%',
  mps: 'm/s',
  kmh: 'km/h',
  mps2: 'm/s²',
  per_m: '1/m',
  n_per_mm: 'N/mm',
  deg_per_g: 'degrees of steering for each g',
  level: '0 to 1 of full scale',
  level_per_s: '0 to 1 of full scale, a second',
  level_per_week: '0 to 1 of full scale, a week',
  level_per_count: '0 to 1 of full scale, a count',
  deg_per_count: 'degrees a count',
  newtons_per_count: 'N a count',
  agreement: 'weighted kappa: 1 is always, 0 is chance',
  agreement_per_week: 'weighted kappa, a week',
  share: '1 is all',
  utilization: '1 is all the grip there is',
  margin: 'grip to spare, 1 is all of it',
  points: 'points of the score',
  score: '0 to 100 points',
  ratio: '1 is the same',
  factor: '1 is the same',
  deviations: 'standard deviations',
  count: 'how many',
  counts: 'raw counts of the device',
  reps: 'reps, how many',
  weeks: 'weeks, how many',
  practices: 'practices, how many',
  gear: 'gear',
  version: 'version',
  id: 'identity',
};

/** Numbers that have no unit, or that stand in the unit of what they are part of. */
const PLAIN = new Set([
  // which one: a place in a row, or a name that is a number
  'rep',
  'block',
  'zone',
  'lap',
  'line',
  'column',
  'number',
  'rep_number',
  'practice',
  'format',
  'interface',
  'missed_week',
  'pedal_change_week',
  // how many
  'aborted',
  'most',
  'gaps',
  'gears',
  'reports',
  'dropped_reports',
  'buttons',
  'most_shown_in_a_row',
  'days_left',
  'missing_practices_for_plateau',
  'reapplications_per_rep',
  'until_rep',
  // figures of statistics and of materials
  'mann_kendall_statistic',
  'mann_kendall_chance',
  'autocorrelation',
  'weighted_mean_weight',
  'rate_per_practice',
  'exponent',
  'corrected_information',
  'smoothness_difference',
  'pad_friction_front',
  'pad_friction_rear',
  'grip',
  'fatigue_limit',
  // fields of a report descriptor, as USB HID 1.11 counts them
  'bit_offset',
  'bit_size',
  'usage_page',
  'logical_min',
  'logical_max',
  'physical_min',
  'physical_max',
  'unit',
  'unit_exponent',
]);

/**
 * The unit in words that the name of a number ends in; null for one of the few that have none.
 *
 * @throws Error for a name that says no unit
 */
export function unitOfName(name: string): string | null {
  const words = name.split('_');
  for (let from = 0; from < words.length; from++) {
    const unit = UNITS[words.slice(from).join('_')];
    if (unit !== undefined) return unit;
  }
  if (PLAIN.has(name)) return null;
  throw new Error(`the name of the number ${name} ends in no unit`);
}
