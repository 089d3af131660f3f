import { quantiseRecord } from '../trace/quantise-record.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { radiansFromDegrees } from '../units.ts';
import { finished, isDue, startLiveCar } from './drive-live-car.ts';
import { driveOf, type LiveDrive } from './live-drive.ts';
import { inputsOfRecord } from './live-inputs.ts';
import type { LiveColumns, LiveRun } from './live-run.ts';
import type { LiveZone } from './live-zone.ts';
import { railSteeringRad } from './rail-steering.ts';
import { stepTimeS } from './step-time.ts';
import { takeStep } from './take-step.ts';

/**
 * Drives a zone from a finished record of the rep, quantised or not: the same to the bit as when it was driven live.
 * A record that begins after the car rolled leaves what came before it at rest.
 */
export function driveRecord(zone: LiveZone, record: RepRecord): LiveRun {
  const drive = driveOf(zone, startLiveCar(zone), inputsOfRecord(record));
  const { endS } = quantiseRecord(record);
  const columns = newColumns(stepsUntil(endS));
  while (isDue(drive.step, endS)) {
    const { step } = drive;
    columns.placeM[step] = drive.motion.sM;
    columns.speedMps[step] = drive.motion.speedMps;
    takeStep(drive);
    log(drive, columns, step);
  }
  return { zone, columns, end: finished(drive) };
}

function stepsUntil(endS: number): number {
  let steps = 0;
  while (isDue(steps, endS)) steps++;
  return steps;
}

function newColumns(count: number): LiveColumns {
  const column = (): Float64Array => new Float64Array(count);
  return {
    timeS: column(),
    placeM: column(),
    speedMps: column(),
    level: column(),
    steeringRad: column(),
    accelXMps2: column(),
    accelYMps2: column(),
    frontUse: column(),
    rearUse: column(),
  };
}

/** What the step that was just taken began with, and the acceleration over it. */
function log(drive: LiveDrive, columns: LiveColumns, step: number): void {
  const { feed, rates, zone, model } = drive;
  const { steeringDeg, brake } = feed.held;
  columns.timeS[step] = stepTimeS(step);
  columns.level[step] = brake;
  columns.steeringRad[step] = zone.controls.steering
    ? radiansFromDegrees(steeringDeg)
    : railSteeringRad(
        model.car,
        model.corner.path.curvatureAt(columns.placeM[step]!),
        columns.speedMps[step]!,
      );
  columns.accelXMps2[step] = drive.accelXMps2;
  columns.accelYMps2[step] = rates.accelYMps2;
  columns.frontUse[step] = rates.frontUse;
  columns.rearUse[step] = rates.rearUse;
}
