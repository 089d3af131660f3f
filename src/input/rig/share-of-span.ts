import { Problem } from '../../problem.ts';
import type { FieldLocation } from '../hid/report-field.ts';
import type { AxisCalibration } from './rig.ts';

/**
 * Fewest counts from rest to full. The narrowest corridor is 1.5 % of full scale either side, so with fewer counts
 * one step of the sensor would jump across it.
 */
export const SMALLEST_SPAN_COUNTS = 67;

/**
 * Where a count lies between rest (0) and full (1), unclamped and before dead zones. Either direction of counting.
 * @throws Problem where the calibration cannot be used: see `checkSpan`.
 */
export function shareOfSpan(
  calibration: AxisCalibration,
  field: FieldLocation,
): (counts: number) => number {
  checkSpan(calibration, field);
  const { restCounts } = calibration;
  const perCount = 1 / (calibration.fullCounts - restCounts);
  return (counts) => (counts - restCounts) * perCount;
}

/** Counts from rest to full that are left between the dead zones. */
export function liveSpanCounts(calibration: AxisCalibration): number {
  const { restCounts, fullCounts, deadStart, deadEnd } = calibration;
  return Math.abs(fullCounts - restCounts) * (1 - deadStart - deadEnd);
}

function checkSpan(calibration: AxisCalibration, field: FieldLocation): void {
  const { restCounts, fullCounts, deadStart, deadEnd } = calibration;
  for (const counts of [restCounts, fullCounts]) checkRepresentable(counts, field);
  if (!(deadStart >= 0 && deadEnd >= 0 && deadStart + deadEnd < 1))
    throw unusable(`dead zones of ${deadStart} and ${deadEnd} leave nothing of the axis between`);
  const live = liveSpanCounts(calibration);
  if (live < SMALLEST_SPAN_COUNTS)
    throw unusable(
      `rest ${restCounts} and full ${fullCounts} leave ${Math.floor(live)} counts, at least ${SMALLEST_SPAN_COUNTS} are needed`,
    );
}

function checkRepresentable(counts: number, { bitSize, signed }: FieldLocation): void {
  const lowest = signed ? -(2 ** (bitSize - 1)) : 0;
  if (counts >= lowest && counts < lowest + 2 ** bitSize) return;
  throw unusable(`${counts} counts do not fit the axis' ${bitSize} bits`);
}

function unusable(what: string): Problem {
  return new Problem(`the calibration cannot be used: ${what}`, {
    next: 'Run `ebbline rig setup` and press the axis fully when asked.',
  });
}
