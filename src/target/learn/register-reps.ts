import { mean } from '../../consistency/mean.ts';
import { standardDeviation } from '../../consistency/standard-deviation.ts';
import { meanCurve, spreadCurve } from '../../drill/diagnosis/mean-curve.ts';
import { RATE_HZ } from '../../score/scoring-filter.ts';
import { columnOf } from '../../trace/column-of.ts';
import { landmarkWarp } from './landmark-warp.ts';
import type { Landmark, LearnRep } from './learn-rep.ts';
import { CLOSEST_S } from './learn-rep-of.ts';

/** A landmark of all reps: seconds after the onset, and how far it differs between reps. */
interface CommonLandmark {
  readonly name: Landmark;
  readonly timeS: number;
  readonly spreadS: number;
}

/** Reps over each other, on one grid of seconds after the onset. */
export interface RegisteredReps {
  readonly fromS: number;
  readonly stepS: number;
  readonly landmarks: readonly CommonLandmark[];
  /** Landmarks that could not be used, and why. */
  readonly unused: readonly { readonly name: Landmark; readonly reason: string }[];
  /** Each rep with its landmarks moved to the common ones. */
  readonly curves: readonly Float64Array[];
  readonly mean: Float64Array;
  /** Standard deviation (n - 1) between reps at each place. */
  readonly spread: Float64Array;
  /** The same reps with only their onsets at one place, as the drill lays them over each other. */
  readonly overTime: readonly Float64Array[];
  /** From common time to the own time of each rep. */
  readonly warps: readonly ((timeS: number) => number)[];
}

const STEP_S = 0.005;
const BEFORE_S = 0.3;
const AFTER_S = 0.3;

/**
 * Registers reps by their landmarks: the common time of each is its mean over the reps.
 *
 * @param reps three or more
 */
export function registerReps(reps: readonly LearnRep[]): RegisteredReps {
  const { names, unused } = landmarksOf(reps);
  const own = reps.map((rep) => names.map((name) => timeOf(rep, name)! - rep.landmarksS.onset));
  const landmarks = names.map((name, k) => ({
    name,
    timeS: mean(own.map((times) => times[k]!))!,
    spreadS: standardDeviation(own.map((times) => times[k]!)) ?? 0,
  }));
  const common = landmarks.map(({ timeS }) => timeS);
  const warps = own.map((times) => landmarkWarp(common, times));
  const longest = Math.max(...own.map((times) => times.at(-1)!));
  const count = Math.ceil((longest + AFTER_S + BEFORE_S) / STEP_S) + 1;
  const curves = reps.map((rep, i) => sampled(rep, warps[i]!, count));
  return {
    fromS: -BEFORE_S,
    stepS: STEP_S,
    landmarks,
    unused,
    curves,
    mean: meanCurve(curves)!,
    spread: spreadCurve(curves)!,
    overTime: reps.map((rep) => sampled(rep, (timeS) => timeS, count)),
    warps,
  };
}

function sampled(rep: LearnRep, own: (timeS: number) => number, count: number): Float64Array {
  const { levels, startS, landmarksS } = rep;
  const last = levels.length - 1;
  return columnOf(count, (i) => {
    const recordS = landmarksS.onset + own(i * STEP_S - BEFORE_S);
    const place = Math.min(last, Math.max(0, (recordS - startS) * RATE_HZ));
    const low = Math.min(last - 1, Math.floor(place));
    return levels[low]! + (place - low) * (levels[low + 1]! - levels[low]!);
  });
}

function timeOf({ landmarksS, turnInS }: LearnRep, name: Landmark): number | null {
  return name === 'turn-in' ? turnInS : landmarksS[name];
}

/** Landmarks have to be known in all reps, in one order, and apart; those that cannot be missed are. */
function landmarksOf(reps: readonly LearnRep[]): {
  readonly names: readonly Landmark[];
  readonly unused: RegisteredReps['unused'];
} {
  let names: Landmark[] = ['onset', 'start of release', 'brake off'];
  const unused: { name: Landmark; reason: string }[] = [];
  for (const name of ['near peak', 'turn-in'] as const) {
    const reason = whyNot(reps, names, name);
    if (reason === null) names = inOrder(reps[0]!, [...names, name]);
    else unused.push({ name, reason });
  }
  return { names, unused };
}

function whyNot(
  reps: readonly LearnRep[],
  names: readonly Landmark[],
  name: Landmark,
): string | null {
  const without = reps.filter((rep) => timeOf(rep, name) === null).length;
  if (without === reps.length) return 'no rep has it';
  if (without > 0) return `${without} of ${reps.length} reps do not have it`;
  const order = inOrder(reps[0]!, [...names, name]);
  if (order.at(-1) === name || order[0] === name) return 'it comes outside the braking';
  const isApart = (rep: LearnRep): boolean =>
    order.every(
      (one, k) => k === 0 || timeOf(rep, one)! - timeOf(rep, order[k - 1]!)! >= CLOSEST_S,
    );
  return reps.every(isApart) ? null : 'it comes in another order, or at once, in some reps';
}

function inOrder(rep: LearnRep, names: readonly Landmark[]): Landmark[] {
  return names.toSorted((a, b) => timeOf(rep, a)! - timeOf(rep, b)!);
}
