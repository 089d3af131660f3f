import {
  type MovedTarget,
  modelOf,
  moveTarget,
  type ReleaseData,
  type ReleaseModel,
} from './release-model.ts';

/** What may differ from the target, each alone or together. */
interface FreeParameters {
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

/** A stretch of grid: `steps` either way of `centre`, but not beyond `limit` either way of 0. */
interface Axis {
  readonly centre: number;
  readonly step: number;
  readonly steps: number;
  readonly limit: number;
}

const TIMING = { step: TIMING_STEP_S, steps: TIMING_STEPS, limit: TIMING_STEP_S * TIMING_STEPS };
const RATE = { step: RATE_STEP, steps: RATE_STEPS, limit: RATE_STEP * RATE_STEPS };
const FIXED = { centre: 0, step: 0, steps: 0, limit: 0 };

/**
 * Fits all eight subsets of timing, rate and amount in the level domain: a bounded grid, then a finer one around its
 * best point. Bounds and the level domain keep real differences of shape from being explained away by warping time.
 */
export function causeFits(data: ReleaseData): readonly CauseFit[] {
  const coarse = moved(data, { ...TIMING, centre: 0 }, { ...RATE, centre: 0 });
  return SUBSETS.map((free) => ({ ...bestModel(data, coarse, free), free }));
}

const SUBSETS: readonly FreeParameters[] = [0, 1, 2, 3, 4, 5, 6, 7].map((bits) => ({
  timing: (bits & 1) > 0,
  rate: (bits & 2) > 0,
  amount: (bits & 4) > 0,
}));

/** @param coarse the grid of timing and rate, which holds those of each alone and the target where it is */
function bestModel(
  data: ReleaseData,
  coarse: readonly MovedTarget[],
  free: FreeParameters,
): ReleaseModel {
  const within = coarse.filter(
    ({ timingS, timeRatio }) => (free.timing || timingS === 0) && (free.rate || timeRatio === 1),
  );
  const near = best(within, free);
  const around = moved(
    data,
    free.timing ? finer(TIMING, near.timingS) : FIXED,
    free.rate ? finer(RATE, Math.log(near.timeRatio)) : FIXED,
  );
  const nearer = best(around, free);
  return nearer.meanSquare < near.meanSquare ? nearer : near;
}

function finer(axis: Omit<Axis, 'centre'>, centre: number): Axis {
  return { ...axis, centre, step: axis.step / FINER, steps: FINER };
}

/** The target moved to each point of a grid. */
function moved(data: ReleaseData, timing: Axis, logRate: Axis): readonly MovedTarget[] {
  const timeRatios = places(logRate).map(Math.exp);
  return places(timing).flatMap((timingS) =>
    timeRatios.map((timeRatio) => moveTarget(data, timingS, timeRatio)),
  );
}

function best(grid: readonly MovedTarget[], { amount }: FreeParameters): ReleaseModel {
  const models = grid.map((point) => modelOf(point, amount ? 'free' : 'as it is'));
  return models.reduce((a, b) => (b.meanSquare < a.meanSquare ? b : a));
}

function places({ centre, step, steps, limit }: Axis): number[] {
  const all = Array.from({ length: 2 * steps + 1 }, (_, i) => centre + (i - steps) * step);
  return all.filter((place) => Math.abs(place) <= limit + 1e-12);
}
