import type { AxisCalibration, LoadFit } from './rig.ts';

/** Force at the pedal for a count of a fitted sensor, in newtons; negative below no load. */
export function newtonsAt(load: LoadFit, counts: number): number {
  return load.newtonsPerCount * (counts - load.zeroCounts);
}

/** What level 1 stands for in newtons; null for a sensor that was never fitted to loads. */
export function fullScaleNewtons({
  load,
  fullCounts,
  restCounts,
  deadEnd,
}: AxisCalibration): number | null {
  return load === null ? null : newtonsAt(load, fullCounts - deadEnd * (fullCounts - restCounts));
}
