import { axleFrictionFactor, type Tyre } from '../car/tyre.ts';
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import type { Road, TwoAxleCar } from './two-axle.ts';
import { wheelForces } from './wheel-forces.ts';

/** No car here is faster, m^2/s^2: a corner that is still carried at this speed sets no limit. */
const FASTEST_SQUARED = 150 ** 2;
const SCAN_RATIO = 1.4;
/** Share of the flat, unloaded limit at which the search begins: nothing but a steep adverse bank gets below it. */
const SURELY_CARRIED = 0.5;
const CLOSE = 1e-13;
const MOST_HALVINGS = 60;

/**
 * Largest squared speed up to which both axles carry the corner without braking: the first speed, coming from below,
 * at which the lateral force an axle needs reaches what its load and its load-dependent friction give. Infinity on a
 * straight and where downforce outgrows the need.
 */
export function cornerLimitSquared(car: TwoAxleCar, road: Road, sM: number): number {
  if (road.curvatureAt(sM) === 0) return Number.POSITIVE_INFINITY;
  const spare = (w: number): number => spareLateralN(car, road, sM, w);
  const mu = Math.min(car.frontTyre.lateralFriction, car.rearTyre.lateralFriction) * car.gripShare;
  const flat = (mu * STANDARD_GRAVITY_MPS2) / Math.abs(road.curvatureAt(sM));
  let low = SURELY_CARRIED * flat;
  if (spare(low) <= 0) low = 0;
  let high = Math.max(low * SCAN_RATIO, flat * 1e-3);
  while (spare(high) > 0) {
    if (high > FASTEST_SQUARED) return Number.POSITIVE_INFINITY;
    low = high;
    high *= SCAN_RATIO;
  }
  return rootBetween(spare, low, high);
}

/** Regula falsi with the Illinois halving: the sign changes from plus to minus between the ends. */
function rootBetween(f: (x: number) => number, from: number, to: number): number {
  let [low, high, fLow, fHigh] = [from, to, f(from), f(to)];
  let last = 0;
  for (let i = 0; i < MOST_HALVINGS && high - low > CLOSE * high; i++) {
    const middle = (low * fHigh - high * fLow) / (fHigh - fLow);
    const value = f(middle);
    if (value === 0) return middle;
    if (value > 0) {
      [low, fLow] = [middle, value];
      if (last > 0) fHigh /= 2;
    } else {
      [high, fHigh] = [middle, value];
      if (last < 0) fLow /= 2;
    }
    last = value;
    if (Math.abs(value) <= CLOSE * Math.abs(f(from))) return middle;
  }
  return low;
}

/** Lateral force that the worse axle still has to spare, N; negative where it slides. */
function spareLateralN(car: TwoAxleCar, road: Road, sM: number, w: number): number {
  const { frontLoadN, rearLoadN, frontAcrossN, rearAcrossN } = wheelForces(car, road, sM, w);
  return Math.min(
    spareN(car, car.frontTyre, frontLoadN, frontAcrossN),
    spareN(car, car.rearTyre, rearLoadN, rearAcrossN),
  );
}

function spareN(car: TwoAxleCar, tyre: Tyre, loadN: number, acrossN: number): number {
  const movedN = (acrossN * car.chassis.cgHeightM) / car.trackM;
  const factor = car.gripShare * axleFrictionFactor(tyre, loadN, movedN);
  return tyre.lateralFriction * factor * loadN - acrossN;
}
