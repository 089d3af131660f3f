import type { BrakingModel } from './braking-model.ts';

const COARSE_M = 0.5;
const FINE_M = 1e-4;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The place along a path of the given length at which the corner allows the least speed: a scan, then a golden-section
 * search between its neighbours. Where the least speed holds over an arc, the start of the arc.
 */
export function slowestPointM(model: BrakingModel, lengthM: number): number {
  const count = Math.ceil(lengthM / COARSE_M);
  const step = lengthM / count;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= count; i++) {
    const w = model.cornerLimit(i * step);
    if (w < least * (1 - 1e-9)) {
      least = w;
      best = i * step;
    }
  }
  return refine(model, Math.max(0, best - step), Math.min(lengthM, best + step), best);
}

/** Keeps the scan's own place unless the search finds a lower speed. */
function refine(model: BrakingModel, fromM: number, toM: number, scanned: number): number {
  let [low, high] = [fromM, toM];
  while (high - low > FINE_M) {
    const left = high - GOLDEN * (high - low);
    const right = low + GOLDEN * (high - low);
    if (model.cornerLimit(left) <= model.cornerLimit(right)) high = right;
    else low = left;
  }
  const found = (low + high) / 2;
  return model.cornerLimit(found) < model.cornerLimit(scanned) * (1 - 1e-9) ? found : scanned;
}
