import type { Conditions } from './rep-measure.ts';

const NAMES: readonly (keyof Conditions)[] = [
  'targetVersion',
  'scoreVersion',
  'source',
  'sensor',
  'calibrationId',
  'foot',
  'footwear',
  'condition',
];

/** What differs between two reps so that they do not compare. A rep without a score has no score version to differ. */
export function changedConditions(before: Conditions, after: Conditions): (keyof Conditions)[] {
  // asked for every rep of years, and nearly always the same object
  if (before === after) return [];
  return NAMES.filter(
    (name) => before[name] !== null && after[name] !== null && before[name] !== after[name],
  );
}
