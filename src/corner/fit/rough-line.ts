import type { TurningSignal } from './turning-signal.ts';

/** A bend as it can be read off a smoothed signal, for the fit to start from. */
export interface RoughLine {
  /** Where the curvature passes a tenth and nine tenths of its largest value, going in and coming out. */
  readonly in10M: number;
  readonly in90M: number;
  readonly out90M: number;
  readonly out10M: number;
  /** The car goes straight again before the log ends. */
  readonly hasExit: boolean;
  /** What belongs to this bend: from where the one before has gone straight to where the next one begins. */
  readonly fromM: number;
  readonly toM: number;
  /** The car soon turns the other way by as much as a third. */
  readonly turnsBack: boolean;
}

const STRAIGHT_SHARE = 0.3;
/** A turn the other way that follows within this is the second half of a chicane (common practice, no source). */
const SAME_CORNER_M = 40;
/** The tightest place is not far from the slowest one, m. */
const NEAR_M = 25;
/** Samples to each side of a moving mean. */
const HALF_WIDTH = 3;

/** @returns null where the signal stays at nothing */
export function roughLine(
  { values, gain }: Pick<TurningSignal, 'values' | 'gain'>,
  placeM: Float64Array,
  slowestM: number,
): RoughLine | null {
  const curvature = movingMean(values.map((value, i) => value / gain[i]!));
  const size = (i: number): number => Math.abs(curvature[i]!);
  const near = [...placeM.keys()].filter((i) => Math.abs(placeM[i]! - slowestM) <= NEAR_M);
  const peak = near.reduce((best, i) => (size(i) > size(best) ? i : best), near[0]!);
  const top = curvature[peak]!;
  if (top === 0) return null;
  const last = placeM.length - 1;
  const walk = (from: number, step: 1 | -1, goesOn: (share: number) => boolean): number => {
    let i = from;
    while (i + step >= 0 && i + step <= last && goesOn(curvature[i]! / top)) i += step;
    return i;
  };
  const passed = (share: number, step: 1 | -1): number => walk(peak, step, (at) => at > share);
  const isStraight = (at: number): boolean => Math.abs(at) < STRAIGHT_SHARE;
  const out = passed(0.1, 1);
  const hasExit = isStraight(curvature[out]! / top);
  const next = Math.min(last, walk(out, 1, isStraight) + 1);
  const turnsBack = (i: number, wayM: number): boolean =>
    curvature[i]! / top < -STRAIGHT_SHARE && wayM < SAME_CORNER_M;
  return {
    in10M: placeM[passed(0.1, -1)]!,
    in90M: placeM[passed(0.9, -1)]!,
    out90M: placeM[passed(0.9, 1)]!,
    out10M: placeM[out]!,
    fromM: placeM[walk(passed(0.1, -1), -1, isStraight)]!,
    toM: placeM[hasExit ? next : passed(0.9, 1)]!,
    hasExit,
    turnsBack: hasExit && turnsBack(next, placeM[next]! - placeM[out]!),
  };
}

function movingMean(values: Float64Array): Float64Array {
  return values.map((_, i) => {
    const part = values.subarray(Math.max(0, i - HALF_WIDTH), i + HALF_WIDTH + 1);
    return part.reduce((sum, value) => sum + value, 0) / part.length;
  });
}
