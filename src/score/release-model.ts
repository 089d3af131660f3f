/** A release described as the target's: moved by `timingS`, its time stretched by `timeRatio`, its level by `amountRatio`. */
export interface ReleaseModel {
  /** Positive is late. */
  readonly timingS: number;
  /** Time that the release takes over the target's: above 1 is slow. */
  readonly timeRatio: number;
  /** Level over the target's: above 1 is heavy. */
  readonly amountRatio: number;
  /** Mean square of what is left of the difference between rep and model. */
  readonly meanSquare: number;
}

/** The target moved and stretched in time, and what that has in common with the rep, whatever its amount. */
export interface MovedTarget {
  readonly timingS: number;
  readonly timeRatio: number;
  readonly points: number;
  /** Sums over the points: of the rep squared, of rep times target, of the target squared. */
  readonly repRep: number;
  readonly repTarget: number;
  readonly targetTarget: number;
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

/** Holds a rep against `target(mark + (t - mark - timing) / timeRatio)`. */
export function moveTarget(data: ReleaseData, timingS: number, timeRatio: number): MovedTarget {
  const step = Math.max(1, Math.round((data.to - data.from) / POINTS));
  const delay = timingS * data.rateHz;
  let points = 0;
  let repRep = 0;
  let repTarget = 0;
  let targetTarget = 0;
  for (let i = data.from; i <= data.to; i += step) {
    const rep = data.rep[i]!;
    const place = data.mark + (i - data.mark - delay) / timeRatio;
    const target = between(data.target, place, data.peak);
    points += 1;
    repRep += rep * rep;
    repTarget += rep * target;
    targetTarget += target * target;
  }
  return { timingS, timeRatio, points, repRep, repTarget, targetTarget };
}

/** With the target's own level, or with the factor on it that leaves least (least squares, within bounds). */
export function modelOf(moved: MovedTarget, amount: 'as it is' | 'free'): ReleaseModel {
  const { timingS, timeRatio, points, repRep, repTarget, targetTarget } = moved;
  const amountRatio = amount === 'free' ? bestAmount(repTarget, targetTarget) : 1;
  const rest = repRep - 2 * amountRatio * repTarget + amountRatio * amountRatio * targetTarget;
  return { timingS, timeRatio, amountRatio, meanSquare: Math.max(0, rest) / points };
}

function bestAmount(repTarget: number, targetTarget: number): number {
  if (!(targetTarget > 0)) return 1;
  return Math.min(HEAVIEST, Math.max(LIGHTEST, repTarget / targetTarget));
}

/** The level between grid points, held before `first` and after the end. */
function between(levels: Float64Array, place: number, first: number): number {
  const clamped = Math.min(Math.max(place, first), levels.length - 1);
  const low = Math.floor(clamped);
  const high = Math.min(low + 1, levels.length - 1);
  return levels[low]! + (clamped - low) * (levels[high]! - levels[low]!);
}
