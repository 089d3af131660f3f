import type { TargetFile } from '../target-file.ts';
import type { CurvePoint } from './curve-point.ts';

/** How far one key press moves something, from fine to coarse. */
const TIMES_S = [0.001, 0.005, 0.01, 0.05, 0.1] as const;
const PLACES_M = [0.1, 0.5, 1, 5, 10] as const;
const LEVELS = [0.001, 0.005, 0.01, 0.02, 0.05] as const;
const NUMBERS = [0.01, 0.05, 0.1, 0.2, 0.5] as const;

export const FIRST_STEP = 2;
export const COARSEST_STEP = 4;

/** Along the file's axis, in its unit. */
export function placeStep({ domain }: Pick<TargetFile, 'domain'>, step: number): number {
  return (domain === 'time' ? TIMES_S : PLACES_M)[step]!;
}

/** Of what the point says: levels and shares of 1, or a plain number. */
export function valueStep({ kind }: Pick<CurvePoint, 'kind'>, step: number): number {
  return (kind === 'number' ? NUMBERS : LEVELS)[step]!;
}
