import type { BrakingModel } from './braking-model.ts';

const STEP_M = 0.5;

/**
 * Largest squared speed at each place of a stretch from which everything later on it can still be made: the corner's
 * own limit, and before a tighter place what the brakes can take off (a double apex, the second half of a chicane).
 * Infinity where nothing limits.
 */
export function speedCeiling(
  model: BrakingModel,
  fromM: number,
  toM: number,
): (sM: number) => number {
  const count = Math.ceil((toM - fromM) / STEP_M);
  const h = (toM - fromM) / count;
  const squared = new Array<number>(count + 1).fill(Number.POSITIVE_INFINITY);
  squared[count] = model.cornerLimit(toM);
  for (let i = count - 1; i >= 0; i--) {
    const sM = fromM + i * h;
    squared[i] = Math.min(model.cornerLimit(sM), before(model, sM, squared[i + 1] as number, h));
  }
  return (sM) => {
    const at = Math.min(count - 1, Math.max(0, Math.floor((sM - fromM) / h)));
    const [a, b] = [squared[at] as number, squared[at + 1] as number];
    const between = a + (b - a) * ((sM - fromM) / h - at);
    return Math.min(model.cornerLimit(sM), Number.isFinite(between) ? between : Infinity);
  };
}

/** Squared speed a step before a later one at the limit of the brakes, by the midpoint rule. */
function before(model: BrakingModel, sM: number, later: number, h: number): number {
  if (!Number.isFinite(later)) return later;
  const half = later + h * model.limit(sM + h, later).decelerationMps2;
  return later + 2 * h * model.limit(sM + h / 2, half).decelerationMps2;
}
