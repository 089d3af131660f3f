import type { Conditions } from './rep-measure.ts';

/** What may change between reps, in the driver's words. */
export const CONDITION_WORDS: Readonly<Record<keyof Conditions, string>> = {
  targetVersion: 'target version',
  scoreVersion: 'score version',
  source: 'source',
  sensor: 'sensor',
  calibrationId: 'calibration',
  foot: 'foot',
  footwear: 'footwear',
  condition: 'condition',
};
