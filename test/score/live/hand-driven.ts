import type { Car } from '../../../src/car/car.ts';
import type { Corner } from '../../../src/corner/corner.ts';
import { liveZone } from '../../../src/live/build-live-zone.ts';
import { startLiveCar } from '../../../src/live/drive-live-car.ts';
import type { LiveEvent } from '../../../src/live/live-event.ts';
import type { LiveRun } from '../../../src/live/live-run.ts';
import type { LiveControls, LiveZone } from '../../../src/live/live-zone.ts';
import { deriveTarget } from '../../../src/target/derive/derive-target.ts';
import type { RepRecord } from '../../../src/trace/rep-record.ts';
import { PEDAL_ONLY } from '../../live-car/rigs.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';
import { brakeAlone } from '../../trace/brake-alone.ts';

/** The car of test/reference/live-score.json: nothing slows it but its brakes, and its foot may release at once. */
export const BARE_CAR: Car = {
  ...GT_CAR,
  aero: { ...GT_CAR.aero, dragAreaM2: 0, downforceAreaM2: 0 },
  engine: {
    ...GT_CAR.engine,
    brakingTorque: [
      { rpm: 1000, torqueNm: 0 },
      { rpm: 8000, torqueNm: 0 },
    ],
  },
  driver: { ...GT_CAR.driver, releaseNps: 1e9 },
};
export const BARE_CORNER: Corner = { ...SMOOTH_CORNER, gripShare: 0.95 };

export function bareZone(controls: LiveControls = PEDAL_ONLY): LiveZone {
  const derived = deriveTarget(BARE_CAR, BARE_CORNER, 'point-mass');
  return liveZone({ derived, advice: null, controls, call: null });
}

/** How a foot brakes, as in the reference. Places are m from turn-in. */
export interface HandRep {
  readonly peak: number;
  readonly rise_s: number;
  readonly from_m: number;
  readonly to_m: number;
  readonly power: number;
  readonly late_m: number;
  readonly steps: number;
}

/** Level at a place, `sinceS` after the foot came down. */
export function handLevel(rep: HandRep, sM: number, sinceS: number): number {
  if (sinceS < 0) return 0;
  const u = Math.min(1, sinceS / rep.rise_s);
  const hit = rep.peak * u ** 3 * (10 - 15 * u + 6 * u * u);
  const run = (sM - rep.from_m) / (rep.to_m - rep.from_m);
  if (run <= 0) return hit;
  if (run >= 1) return 0;
  const left = (1 - run) ** rep.power;
  if (rep.steps === 0) return hit * left;
  return (hit * Math.ceil(Number((left * rep.steps).toFixed(9)))) / rep.steps;
}

export interface Driven {
  readonly run: LiveRun;
  readonly record: RepRecord;
}

/** A body of a mass slowed by its brakes alone, in steps of 1 ms, driven by a foot that sees place and time. */
export function driveByHand(
  zone: LiveZone,
  foot: (sM: number, timeS: number) => number,
  newtonsPerLevel: number,
  events: readonly LiveEvent[] = [],
): Driven {
  const rows: number[][] = [];
  let [sM, speed, after, braking] = [zone.rollFromM, zone.corner.approachSpeedMps, 0, false];
  for (let k = 0; after <= 600; k++) {
    const timeS = (k - 3000) / 1000;
    const level = foot(sM, timeS);
    braking ||= level > 0.015;
    const slowing = braking ? (newtonsPerLevel * level) / zone.car.chassis.massKg : 0;
    rows.push([timeS, sM, speed, level, -slowing]);
    sM += (speed - slowing * 0.0005) * 0.001;
    speed = Math.max(0, speed - slowing * 0.001);
    if (sM >= zone.derived.zone.slowestM || speed <= 0.5) after += 1;
    if (speed <= 0.5) speed = 0;
  }
  return { run: runOf(zone, rows, events), record: recordOf(rows) };
}

function runOf(zone: LiveZone, rows: number[][], events: readonly LiveEvent[]): LiveRun {
  const column = (i: number): Float64Array => Float64Array.from(rows, (row) => row[i] ?? 0);
  const columns = {
    timeS: column(0),
    placeM: column(1),
    speedMps: column(2),
    level: column(3),
    steeringRad: column(9),
    accelXMps2: column(4),
    accelYMps2: column(9),
    frontUse: column(9),
    rearUse: column(9),
  };
  return { zone, columns, end: { ...startLiveCar(zone), events } };
}

function recordOf(rows: number[][]): RepRecord {
  return brakeAlone(
    Float64Array.from(rows, ([timeS]) => timeS!),
    Float64Array.from(rows, (row) => row[3]!),
  );
}
