import type { FieldLocation } from '../../../src/input/hid/report-field.ts';
import type { AxisCalibration } from '../../../src/input/rig/rig.ts';

export const WORD: FieldLocation = { reportId: 0, bitOffset: 0, bitSize: 16, signed: false };

export function calibration(
  restCounts: number,
  fullCounts: number,
  more: Partial<AxisCalibration> = {},
): AxisCalibration {
  return {
    restCounts,
    fullCounts,
    deadStart: 0,
    deadEnd: 0,
    sensor: 'unknown',
    load: null,
    ...more,
  };
}
