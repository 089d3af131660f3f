import { median } from '../../consistency/median.ts';
import type { FitCar } from './fit-car.ts';
import { type FitSignals, placeAt, SMOOTH_S } from './fit-signals.ts';
import { localQuadratic } from './local-quadratic.ts';
import type { Figure, Found } from './zone-fit.ts';

/** The brake is being applied and the car still dives; common practice, no source. */
const APPLIED_S = 0.5;
const FEWEST = 3;

/**
 * Share of the car's straight-line limit that the measured deceleration was, the median from the applied brake to
 * turn-in; null without a car and where the straight part is too short.
 *
 * @param turnInM before the slowest point
 */
export function brakingShare(
  signals: FitSignals,
  turnInM: number,
  car: FitCar | null,
): Found | null {
  if (car === null) return null;
  const { timeS, speedMps, placeM, onsetS, slowestS, gear } = signals;
  const untilM = placeAt(timeS, placeM, slowestS) - turnInM;
  const shares = [...timeS.keys()]
    .filter((i) => timeS[i]! >= onsetS + APPLIED_S && placeM[i]! <= untilM)
    .map((i) => {
      const { value, slope } = localQuadratic(timeS, speedMps, timeS[i]!, SMOOTH_S);
      const logged = Math.round(gear?.[i] ?? 0);
      const isKnown = logged >= 1 && logged <= car.gears;
      return -slope / car.decelerationMps2(value, isKnown ? logged : car.lowestGear(value));
    });
  const value = shares.length < FEWEST ? null : median(shares);
  if (value === null) return null;
  const rule = `deceleration before turn-in over the limit of ${car.name} at that speed, on a flat road`;
  return { value, basis: 'measured', rule };
}

const HALVINGS = 40;
const [LEAST, MOST] = [0.3, 2];

/** Share of the car's grip with which it carries the radius at the slowest speed. */
export function turningShare(
  radius: Found,
  slowestMps: number,
  car: FitCar | null,
): Partial<Record<Figure, Found>> {
  if (car === null || radius.basis !== 'measured') return {};
  let [low, high] = [LEAST, MOST];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (car.radiusM(slowestMps, middle) > radius.value) low = middle;
    else high = middle;
  }
  const rule = `share of the grip of ${car.name} that carries this radius at the slowest speed`;
  return { turningGripShare: { value: high, basis: 'measured', rule } };
}
