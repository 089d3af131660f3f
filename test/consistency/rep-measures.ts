import { measureColumns } from '../../src/consistency/measure-columns.ts';
import { allReps, type Reps } from '../../src/consistency/rep-columns.ts';
import type { Conditions, RepMeasure, RepNumbers } from '../../src/consistency/rep-measure.ts';

export const CONDITIONS: Conditions = {
  targetVersion: 'v-one',
  scoreVersion: 1,
  source: 'hid',
  sensor: 'force',
  calibrationId: 'c0ffee',
  foot: 'left',
  footwear: 'race boots',
  condition: 'dry',
};

export function aMeasure(changes: Partial<RepMeasure> = {}): RepMeasure {
  return {
    repId: 1,
    driver: 'Kim',
    targetId: 'hairpin',
    practiceId: 1,
    day: '2026-11-25',
    zone: 'Europe/Berlin',
    conditions: CONDITIONS,
    feedback: 'shown',
    warmUp: false,
    selfRating: null,
    voided: null,
    numbers: someNumbers(),
    ...changes,
  };
}

export function someNumbers(changes: Partial<RepNumbers> = {}): RepNumbers {
  return {
    score: 70,
    releaseErrorLevel: 0.04,
    averageErrorLevel: 0.01,
    startOfReleaseErrorS: 0.02,
    peakError: 0.03,
    reapplications: 1,
    ...changes,
  };
}

/** As the statistics take them. */
export function repsOf(measures: readonly RepMeasure[]): Reps {
  return allReps(measureColumns(measures));
}

/** A rep without a release. */
export const NOTHING: RepNumbers = {
  score: 0,
  releaseErrorLevel: null,
  averageErrorLevel: null,
  startOfReleaseErrorS: null,
  peakError: null,
  reapplications: null,
};

/** A void rep: no numbers and no score version. */
export function aVoid(voided: 'aborted' | 'device lost'): RepMeasure {
  return aMeasure({ voided, numbers: null, conditions: { ...CONDITIONS, scoreVersion: null } });
}

export function times<T>(count: number, make: (i: number) => T): T[] {
  return Array.from({ length: count }, (_, i) => make(i));
}
