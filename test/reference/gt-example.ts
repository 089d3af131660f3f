import type { Aero } from '../../src/car/aero.ts';
import { type Brakes, circleAreaM2 } from '../../src/car/brakes.ts';
import type { Chassis } from '../../src/car/chassis.ts';
import type { TwoAxleCar } from '../../src/corner/two-axle.ts';

/**
 * The invented GT car that the hand-worked values of test/car and test/target are about: mass 1250 kg, wheelbase
 * 2.60 m, centre of gravity 1.25 m before the rear axle and 0.45 m high, wheels 0.33 m; pedal ratio 5, balance bar
 * 0.58, master cylinders 19.05 and 20.6375 mm, one-side pistons 30+34+38 and 28+32 mm, pad friction 0.50, effective
 * radii 0.158 and 0.142 m; drag area 1.0 m^2, downforce area 3.0 m^2 with 0.42 in front, air 1.2 kg/m^3.
 */
export const GT_CHASSIS: Chassis = {
  massKg: 1250,
  cgToFrontM: 1.35,
  cgToRearM: 1.25,
  cgHeightM: 0.45,
  frontWheelRadiusM: 0.33,
  rearWheelRadiusM: 0.33,
};

const millimetres = (...diameters: number[]): number =>
  diameters.reduce((area, d) => area + circleAreaM2(d / 1000), 0);

export const GT_BRAKES: Brakes = {
  pedalRatio: 5,
  pedalEfficiency: 1,
  balanceBarFront: 0.58,
  pushOutPa: 0,
  rearValve: null,
  front: {
    masterCylinderAreaM2: millimetres(19.05),
    pistonAreaM2: millimetres(30, 34, 38),
    padFriction: 0.5,
    effectiveRadiusM: 0.158,
    wheelRadiusM: 0.33,
  },
  rear: {
    masterCylinderAreaM2: millimetres(20.6375),
    pistonAreaM2: millimetres(28, 32),
    padFriction: 0.5,
    effectiveRadiusM: 0.142,
    wheelRadiusM: 0.33,
  },
};

export const GT_AERO: Aero = {
  dragAreaM2: 1,
  downforceAreaM2: 3,
  frontShare: 0.42,
  airDensityKgpm3: 1.2,
};

/** Share of the braking force in front that these brakes give. */
export const GT_FRONT_BRAKE_SHARE = 0.777329;

/** Friction 1.4 whatever the load. */
export const GT_TYRE: TwoAxleCar['frontTyre'] = {
  longitudinalFriction: 1.4,
  lateralFriction: 1.4,
  referenceLoadN: 3000,
  loadSensitivity: 0,
};

/** The example without air forces, rear-driven. */
export const GT_WITHOUT_AIR: TwoAxleCar = {
  chassis: GT_CHASSIS,
  aero: { ...GT_AERO, dragAreaM2: 0, downforceAreaM2: 0 },
  frontTyre: GT_TYRE,
  rearTyre: GT_TYRE,
  trackM: 1.6,
  frontBrakeShare: GT_FRONT_BRAKE_SHARE,
  frontDriveShare: 0,
  rollingResistance: 0,
  gripShare: 1,
};
