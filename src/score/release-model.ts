/** A release described as the target's, moved by `timingS`, stretched by `rateRatio`, scaled by `amountRatio`. */
export interface ReleaseModel {
  readonly timingS: number;
  readonly rateRatio: number;
  readonly amountRatio: number;
  /** Mean square of what is left of the difference between rep and model. */
  readonly meanSquare: number;
}

/** A release and its target on one grid. */
export interface ReleaseData {
  readonly rep: Float64Array;
  readonly target: Float64Array;
  /** Grid points compared, both included. */
  readonly from: number;
  readonly to: number;
  /** Grid point of the target's start of release, about which time is stretched. */
  readonly mark: number;
  /** Grid point of the target's peak; before it the model stays at the peak, so that the hit plays no part. */
  readonly peak: number;
  readonly rateHz: number;
}

/** So many points are compared, about 10 ms apart: nothing a foot does on purpose is quicker. */
const POINTS = 180;
const LIGHTEST = 0.6;
const HEAVIEST = 1.5;

/**
 * Compares a rep with `amount * target(mark + (t - mark - timing) / rate)`.
 *
 * @param amount 'free' takes the best factor (least squares, within bounds), 'one' leaves the target as it is.
 */
export function evaluateModel(
  data: ReleaseData,
  timingS: number,
  rateRatio: number,
  amount: 'free' | 'one',
): ReleaseModel {
  const step = Math.max(1, Math.round((data.to - data.from) / POINTS));
  const delay = timingS * data.rateHz;
  let count = 0;
  let repRep = 0;
  let repModel = 0;
  let modelModel = 0;
  for (let i = data.from; i <= data.to; i += step) {
    const rep = data.rep[i]!;
    const model = between(data.target, data.mark + (i - data.mark - delay) / rateRatio, data.peak);
    count += 1;
    repRep += rep * rep;
    repModel += rep * model;
    modelModel += model * model;
  }
  const amountRatio = amount === 'one' ? 1 : bestAmount(repModel, modelModel);
  const rest = repRep - 2 * amountRatio * repModel + amountRatio * amountRatio * modelModel;
  return { timingS, rateRatio, amountRatio, meanSquare: Math.max(0, rest) / count };
}

function bestAmount(repModel: number, modelModel: number): number {
  if (!(modelModel > 0)) return 1;
  return Math.min(HEAVIEST, Math.max(LIGHTEST, repModel / modelModel));
}

/** The level between grid points, held before `first` and after the end. */
function between(levels: Float64Array, place: number, first: number): number {
  const clamped = Math.min(Math.max(place, first), levels.length - 1);
  const low = Math.floor(clamped);
  const high = Math.min(low + 1, levels.length - 1);
  return levels[low]! + (clamped - low) * (levels[high]! - levels[low]!);
}
