import type { SteeringCoupling } from '../../../src/drill/diagnosis/steering-coupling.ts';
import type { GgSubject } from '../../../src/screens/grip/gg-picture.ts';
import type { GripLimit } from '../../../src/target/derive/grip-limit.ts';
import type { GripTrace } from '../../../src/target/derive/grip-trace.ts';

const G = 9.80665;

/** A quarter of an ellipse, half axes in g. */
function ellipse(speedMps: number, alongG: number, acrossG: number): GripLimit {
  const turn = (i: number): number => (i / 48) * (Math.PI / 2);
  return {
    speedMps,
    accelXMps2: Float64Array.from({ length: 49 }, (_, i) => -alongG * G * Math.cos(turn(i))),
    accelYMps2: Float64Array.from({ length: 49 }, (_, i) => acrossG * G * Math.sin(turn(i))),
  };
}

/** Place, g along, g across, share of the front and of the rear axle's grip. */
type Row = readonly [number, number, number, number, number];

export function trace(rows: readonly Row[]): GripTrace {
  const column = (at: 0 | 1 | 2 | 3 | 4, unit: number): Float64Array =>
    Float64Array.from(rows, (row) => unit * row[at]);
  return {
    placeM: column(0, 1),
    accelXMps2: column(1, G),
    accelYMps2: column(2, G),
    frontUse: column(3, 1),
    rearUse: column(4, 1),
  };
}

export const TARGET: GripTrace = trace([
  [-70, -0.1, 0, 0.1, 0.1],
  [-60, -1.8, 0, 1, 0.8],
  [-30, -1.6, 0, 1, 0.82],
  [0, -1.5, 0.1, 1, 0.85],
  [15, -1.2, 0.8, 1, 0.92],
  [30, -0.6, 1.3, 0.95, 1],
  [46, -0.1, 1.5, 0.9, 1],
]);
/** Brakes late and longer in a straight line, turns in beyond the limit, and is off the brake early. */
export const OWN: GripTrace = trace([
  [-65, -0.1, 0, 0.1, 0.1],
  [-55, -1.7, 0, 0.94, 0.7],
  [-20, -1.5, 0, 0.9, 0.7],
  [0, -1.4, 0.1, 0.88, 0.7],
  [12, -1.3, 0.9, 1.12, 0.9],
  [20, -0.5, 1, 0.8, 0.75],
  [30, -0.1, 1.2, 0.8, 0.8],
  [46, -0.05, 1.4, 0.95, 0.9],
]);

export const GG: GgSubject = {
  limits: { fast: ellipse(68, 2.1, 1.9), slow: ellipse(16, 1.5, 1.5) },
  target: TARGET,
  own: [OWN],
  speedText: (speedMps) => `${Math.round(3.6 * speedMps)} km/h`,
};

/** The same car turning right. */
export const mirrored = (one: GripTrace): GripTrace => ({
  ...one,
  accelYMps2: one.accelYMps2.map((across) => -across),
});

export const TARGET_COUPLING: SteeringCoupling = {
  level: Float64Array.of(0.6, 0.55, 0.5, 0.35, 0.2, 0.1, 0),
  steeringDeg: Float64Array.of(0, 0, 4, 30, 60, 80, 95),
};
export const OWN_COUPLING: SteeringCoupling = {
  level: Float64Array.of(0.62, 0.6, 0.56, 0.3, 0.08, 0.02, 0),
  steeringDeg: Float64Array.of(0, 0, 0, 12, 40, 70, 90),
};
