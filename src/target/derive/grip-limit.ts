import type { Car } from '../../car/car.ts';
import type { BrakingModel } from '../../corner/braking-model.ts';
import type { Corner } from '../../corner/corner.ts';
import { type ModelName, zoneModel, zoneSetting } from './zone-model.ts';

/** Where on the zone a limit is asked for, how fast the car is there, and in which gear. */
interface LimitPlace {
  readonly sM: number;
  readonly speedMps: number;
  readonly gear: number;
}

/**
 * The most a car can slow down beside each lateral acceleration at one speed: the braking side of its g-g diagram, from
 * straight braking to cornering off the brake. It holds for both directions.
 */
export interface GripLimit {
  readonly speedMps: number;
  /** ISO 8855: negative when slowing; drag, engine and slope included. */
  readonly accelXMps2: Float64Array;
  /** Without its sign, ascending from 0. */
  readonly accelYMps2: Float64Array;
}

const STEPS = 48;
const HALVINGS = 40;

/**
 * The limit with all of the grip, whatever share of it the corner's target uses, on the slope and bank of a place.
 * Downforce lets it grow with speed; with fixed brake bias it lies inside the ellipse of the tyres.
 */
export function gripLimit(
  car: Car,
  corner: Corner,
  { sM, speedMps, gear }: LimitPlace,
  model: ModelName = 'two-axle',
): GripLimit {
  const w = speedMps ** 2;
  // One model of a road whose curvature is whatever is asked of it.
  const road = { curvature: 0 };
  const path = { ...corner.path, curvatureAt: () => road.curvature };
  const bent: Corner = { ...corner, gripShare: 1, path };
  const solver = zoneModel(model, zoneSetting(car, bent), [{ fromM: 0, gear }]);
  const turning = (acrossMps2: number): BrakingModel => {
    road.curvature = acrossMps2 / w;
    return solver;
  };
  const mostMps2 = mostLateralMps2((across) => turning(across).cornerLimit(sM) >= w);
  const accelYMps2 = Float64Array.from(
    { length: STEPS + 1 },
    (_, i) => mostMps2 * Math.sin((i / STEPS) * (Math.PI / 2)),
  );
  return {
    speedMps,
    accelYMps2,
    accelXMps2: accelYMps2.map((across) => -turning(across).limit(sM, w).decelerationMps2),
  };
}

/** No car here corners with more, m/s^2. */
const SURELY_TOO_MUCH = 100;

function mostLateralMps2(isCarried: (accelYMps2: number) => boolean): number {
  let [low, high] = [0, SURELY_TOO_MUCH];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (isCarried(middle)) low = middle;
    else high = middle;
  }
  return low;
}
