import type { Car } from '../../src/car/car.ts';
import type { Corner } from '../../src/corner/corner.ts';
import { joinPath } from '../../src/corner/path.ts';
import { GT_AERO, GT_BRAKES, GT_CHASSIS } from './gt-example.ts';

const tyre = {
  longitudinalFriction: 1.4,
  lateralFriction: 1.4,
  referenceLoadN: 3000,
  loadSensitivity: 0,
};
const wheel = { inertiaKgm2: 1.2, slidingShare: 0.8 };
const disc = {
  massKg: 9,
  specificHeatJpkgK: 480,
  coolingAreaM2: 0.12,
  coolingAtRestWpm2K: 4,
  coolingPerRadpsWpm2K: 0.73,
  heatShare: 0.95,
};
const pads = [{ discC: 20, friction: 0.5 }];

/** The GT example as a whole car: gears 1.9 and 2.6 on a final drive of 3.4 are the hand-worked ones. */
export const GT_CAR: Car = {
  id: 'gt-example',
  name: 'GT example',
  chassis: GT_CHASSIS,
  trackM: 1.6,
  aero: GT_AERO,
  tyres: { front: tyre, rear: tyre },
  wheels: { front: wheel, rear: wheel },
  rollingResistance: 0,
  rotatingShare: 0,
  brakes: GT_BRAKES,
  discs: { front: disc, rear: disc },
  padCurves: { front: pads, rear: pads },
  discStartC: { front: 300, rear: 300 },
  padStartC: { front: 300, rear: 300 },
  tyreStartC: 80,
  airC: 25,
  antiLock: null,
  electric: null,
  gearbox: {
    ratios: [2.6, 1.9, 1.45, 1.15, 0.95, 0.8],
    finalDrive: 3.4,
    efficiency: 1,
    drivenWheelRadiusM: 0.33,
    revLimitRpm: 7500,
    shiftS: 0.1,
    blip: true,
  },
  engine: {
    driveTorque: [
      { rpm: 2000, torqueNm: 380 },
      { rpm: 7000, torqueNm: 480 },
    ],
    brakingTorque: [
      { rpm: 1000, torqueNm: 40 },
      { rpm: 8000, torqueNm: 80 },
    ],
    inertiaKgm2: 0.15,
  },
  frontDriveShare: 0,
  driver: { riseS: 0.2, peakPedalForceN: 1200, releaseNps: 2500 },
  pedal: { travelM: null, deadStrokeM: null, stiffnessNpm: null },
  pitchHz: 2,
  steeringRatio: 14,
  understeerRadpMps2: 0,
  fullScalePedalForceN: 1000,
};

/** A flat hairpin-like corner with a smooth apex of 50 m radius, 60 m of entry, from 60 m/s. */
export const SMOOTH_CORNER: Corner = {
  id: 'smooth',
  name: 'smooth corner',
  cornerType: 'right-angle',
  variant: 'qualifying',
  path: joinPath([
    { kind: 'smooth', lengthM: 60, startCurvature: 0, endCurvature: 0.02 },
    { kind: 'smooth', lengthM: 60, startCurvature: 0.02, endCurvature: 0 },
  ]),
  approachSpeedMps: 60,
  approachM: 250,
  slopeAt: () => 0,
  bankAt: () => 0,
  bumps: [],
  coachMark: null,
  gears: { approach: 5, slowest: 3, shiftsAtM: null },
  gripShare: 1,
};
