import { evaluateModel, type ReleaseData, type ReleaseModel } from './release-model.ts';

/** What may differ from the target, each alone or together. */
export interface FreeParameters {
  readonly timing: boolean;
  readonly rate: boolean;
  readonly amount: boolean;
}

/** The best model with some of the parameters free and the others neutral. */
export interface CauseFit extends ReleaseModel {
  readonly free: FreeParameters;
}

const TIMING_STEP_S = 0.005;
/** 200 ms either way. */
const TIMING_STEPS = 40;
/** From 3/4 to 4/3, even in logarithm, with 1 in the middle. */
const RATE_STEP: number = Math.log(4 / 3) / 8;
const RATE_STEPS = 8;
/** Around the best grid point the search is repeated on a grid finer by this. */
const FINER = 8;

/** A stretch of grid: `steps` either way of `centre`. */
interface Axis {
  readonly centre: number;
  readonly step: number;
  readonly steps: number;
}

/**
 * Fits all eight subsets of timing, rate and amount in the level domain: a bounded grid, then a finer one around its
 * best point. Bounds and the level domain keep real differences of shape from being explained away by warping time.
 */
export function causeFits(data: ReleaseData): readonly CauseFit[] {
  return SUBSETS.map((free) => ({ ...bestModel(data, free), free }));
}

const SUBSETS: readonly FreeParameters[] = [0, 1, 2, 3, 4, 5, 6, 7].map((bits) => ({
  timing: (bits & 1) > 0,
  rate: (bits & 2) > 0,
  amount: (bits & 4) > 0,
}));

function bestModel(data: ReleaseData, free: FreeParameters): ReleaseModel {
  const coarse = search(
    data,
    { centre: 0, step: TIMING_STEP_S, steps: free.timing ? TIMING_STEPS : 0 },
    { centre: 0, step: RATE_STEP, steps: free.rate ? RATE_STEPS : 0 },
    free.amount,
  );
  const fine = search(
    data,
    { centre: coarse.timingS, step: TIMING_STEP_S / FINER, steps: free.timing ? FINER : 0 },
    { centre: Math.log(coarse.rateRatio), step: RATE_STEP / FINER, steps: free.rate ? FINER : 0 },
    free.amount,
  );
  return fine.meanSquare < coarse.meanSquare ? fine : coarse;
}

function search(data: ReleaseData, timing: Axis, logRate: Axis, amount: boolean): ReleaseModel {
  let best: ReleaseModel | null = null;
  for (let i = -timing.steps; i <= timing.steps; i++) {
    for (let j = -logRate.steps; j <= logRate.steps; j++) {
      const rateRatio = Math.exp(logRate.centre + j * logRate.step);
      const timingS = timing.centre + i * timing.step;
      const model = evaluateModel(data, timingS, rateRatio, amount ? 'free' : 'one');
      if (best === null || model.meanSquare < best.meanSquare) best = model;
    }
  }
  return best!;
}
