import type { Car } from '../../src/car/car.ts';
import type { Corner } from '../../src/corner/corner.ts';
import { joinPath } from '../../src/corner/path.ts';
import type { LiveRun } from '../../src/live/live-run.ts';
import type { LiveZone } from '../../src/live/live-zone.ts';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';
import { GT_AERO, GT_CHASSIS } from '../reference/gt-example.ts';
import { zoneOf } from './rigs.ts';

const TEMPLATE = zoneOf(GT_CAR, SMOOTH_CORNER);

/** The GT example without anything that slows it but brakes and air. */
export const BRAKES_AND_AIR: Car = {
  ...GT_CAR,
  engine: { ...GT_CAR.engine, brakingTorque: [{ rpm: 1000, torqueNm: 0 }] },
};
const sticky = { ...GT_CAR.tyres.front, longitudinalFriction: 3, lateralFriction: 3 };
/** Tyres that hold whatever the brakes ask for. */
export const STICKY: Car = { ...BRAKES_AND_AIR, tyres: { front: sticky, rear: sticky } };
export const NO_AIR: Car = {
  ...STICKY,
  aero: { ...GT_AERO, dragAreaM2: 0, downforceAreaM2: 0 },
};

export const MASS_KG: number = GT_CHASSIS.massKg;
/** Brake force of both axles per newton at the pedal, from 18747.67 + 5370.39 N at 700 N, worked by hand. */
export const PER_PEDAL_N: number = (18747.67 + 5370.39) / 700;

/** A flat straight without end, entered at a speed in a high gear; the cue is at 0 m. */
export function straightZone(car: Car, speedMps: number, part: Partial<Corner> = {}): LiveZone {
  const corner: Corner = {
    ...SMOOTH_CORNER,
    path: joinPath([{ kind: 'constant', lengthM: 5000, startCurvature: 0, endCurvature: 0 }]),
    approachSpeedMps: speedMps,
    gears: { approach: 6, slowest: 6, shiftsAtM: null },
    ...part,
  };
  const zone = { ...TEMPLATE.derived.zone, downshifts: [] };
  return {
    ...TEMPLATE,
    car,
    corner,
    derived: { ...TEMPLATE.derived, car, corner, zone },
    rollFromM: -3 * speedMps,
  };
}

/** Where and when a run passes a speed on its way down, linear between its steps. */
export function passing(
  { columns: { timeS, placeM, speedMps } }: LiveRun,
  atMps: number,
): { readonly timeS: number; readonly placeM: number } {
  const i = speedMps.findIndex((speed) => speed <= atMps);
  if (i < 1) throw new Error(`the run never comes down to ${atMps} m/s`);
  const share = (speedMps[i - 1]! - atMps) / (speedMps[i - 1]! - speedMps[i]!);
  const at = (column: Float64Array): number =>
    column[i - 1]! + share * (column[i]! - column[i - 1]!);
  return { timeS: at(timeS), placeM: at(placeM) };
}
