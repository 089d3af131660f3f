import type { Car, PerAxle } from './car.ts';
import { cooledC, coolingTimeS, heatRiseK } from './disc-heat.ts';
import { contactC, padFrictionAt } from './pad-friction.ts';

/** How hot the brakes are. Left out: radiation, which cools discs above about 400 C faster than this says. */
export interface HeatState {
  readonly discC: PerAxle<number>;
  readonly padC: PerAxle<number>;
}

/** The temperatures a car starts with. */
export function startHeat({ discStartC, padStartC }: Car): HeatState {
  return { discC: discStartC, padC: padStartC };
}

/**
 * After one braking. The stop is taken as too short to cool in, and the pads come to the temperature of the discs.
 * @param workJ braking work of each axle, both wheels together
 */
export function heatedBy(car: Car, { discC }: HeatState, workJ: PerAxle<number>): HeatState {
  const heated = both((axle) => discC[axle] + heatRiseK(car.discs[axle], workJ[axle] / 2));
  return { discC: heated, padC: heated };
}

/** After rolling for a time at a speed: discs and pads cool towards the air by Newton's law. */
export function cooledFor(
  car: Car,
  state: HeatState,
  { durationS, speedMps }: { readonly durationS: number; readonly speedMps: number },
): HeatState {
  const cooled = (temperatures: PerAxle<number>): PerAxle<number> =>
    both((axle) => {
      const wheelSpeed = speedMps / car.brakes[axle].wheelRadiusM;
      const timeConstantS = coolingTimeS(car.discs[axle], wheelSpeed);
      return cooledC(temperatures[axle], car.airC, durationS, timeConstantS);
    });
  return { discC: cooled(state.discC), padC: cooled(state.padC) };
}

/** Pad friction of each axle, from the temperature where pad and disc touch. */
function padFrictions(car: Car, { discC, padC }: HeatState): PerAxle<number> {
  return both((axle) =>
    padFrictionAt(car.padCurves[axle], contactC(car.discs[axle], discC[axle], padC[axle])),
  );
}

/** The car with these temperatures: pad friction, and so pressure, pedal force and distribution, follow from them. */
export function withHeat(car: Car, state: HeatState): Car {
  const friction = padFrictions(car, state);
  const brake = (axle: 'front' | 'rear') => ({
    ...car.brakes[axle],
    padFriction: friction[axle],
  });
  return {
    ...car,
    brakes: { ...car.brakes, front: brake('front'), rear: brake('rear') },
    discStartC: state.discC,
    padStartC: state.padC,
  };
}

function both<T>(of: (axle: 'front' | 'rear') => T): PerAxle<T> {
  return { front: of('front'), rear: of('rear') };
}
