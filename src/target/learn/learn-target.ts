import { mean } from '../../consistency/mean.ts';
import type { Knot } from '../../curve/monotone-cubic.ts';
import { spreadOf } from '../../drill/spread.ts';
import { resample } from '../../trace/resample.ts';
import { levelAlong } from '../level-phases.ts';
import type { LevelPhases } from '../target-spec.ts';
import type { Smoothing } from './choose-smoothing.ts';
import { type FallingPhases, fallingPhases } from './falling-phases.ts';
import { type FittedCorridor, fitCorridor } from './fit-corridor.ts';
import { type FittedRise, fitRise } from './fit-rise.ts';
import type { LearnRep } from './learn-rep.ts';
import { type RegisteredReps, registerReps } from './register-reps.ts';
import { spreadBand } from './spread-band.ts';

/** Fewest reps between which a spread says anything. */
export const FEWEST_REPS = 3;

/** What was learned. Its times are seconds after the start of the rise, but for those of `registered` and `riseS`. */
export interface LearnedCurve {
  readonly registered: RegisteredReps;
  /** Start of the rise, seconds after the onset: the onset is found a little late. */
  readonly riseS: number;
  readonly phases: LevelPhases;
  /** Where the wheel leaves the middle; null where turn-in is no common landmark. */
  readonly turnInS: number | null;
  /** Degrees, left positive, the first at turn-in; empty without it. */
  readonly steering: readonly Knot[];
  readonly smoothing: Smoothing;
  readonly corridor: FittedCorridor;
  /** The learned curve on the grid of `registered`. */
  readonly levels: Float64Array;
  /** Half width that holds four of five reps, on the same grid. */
  readonly band: Float64Array;
  /** Over the release: standard deviation between registered reps, and between the same reps over time. */
  readonly spreadLevel: number;
  readonly overTimeSpreadLevel: number;
  /** Root mean square over the release between the learned curve and the registered mean. */
  readonly missLevel: number;
}

const STEERING_KNOTS = 9;
/** The window in which the drill scores a release. */
const WINDOW_BEFORE_S = 0.05;
const WINDOW_AFTER_S = 0.25;
const ROUNDS = 2;
const LONGEST_BACK_S = 0.3;

/**
 * Learns the curve of several reps of one corner.
 *
 * @param reps three or more
 * @throws RangeError for fewer
 */
export function learnTarget(reps: readonly LearnRep[]): LearnedCurve {
  if (reps.length < FEWEST_REPS) throw new RangeError(`${reps.length} reps are too few`);
  const registered = registerReps(reps);
  const { rise, falling } = fitPhases(registered, mean(reps.map((rep) => rep.restingLevel))!);
  const phases = phasesOf(rise, falling);
  const along = levelAlong(phases);
  const { fromS, stepS, curves, overTime } = registered;
  const levels = registered.mean.map((_, i) => along(fromS + i * stepS - rise.startS));
  const band = spreadBand(overTime, levels);
  const endS = falling.brakeOffS + WINDOW_AFTER_S;
  const whole = stretch(registered, rise.startS, endS);
  const release = stretch(registered, falling.startOfReleaseS - WINDOW_BEFORE_S, endS);
  const startX = fromS + whole.from * stepS - rise.startS;
  return {
    registered,
    riseS: rise.startS,
    phases,
    ...turningOf(reps, registered, rise, falling),
    smoothing: falling.smoothing,
    corridor: fitCorridor(whole.of(levels), whole.of(band), startX, stepS),
    levels,
    band,
    spreadLevel: spreadOf(curves.map(release.of))!,
    overTimeSpreadLevel: spreadOf(overTime.map(release.of))!,
    missLevel: rootMeanSquare(release.of(levels), release.of(registered.mean)),
  };
}

interface Fitted {
  readonly rise: FittedRise;
  readonly falling: FallingPhases;
}

/** Rise and fall meet at the peak, so that each is fitted twice. */
function fitPhases(registered: RegisteredReps, restingLevel: number): Fitted {
  const { mean: levels, fromS, stepS, landmarks } = registered;
  const startOfReleaseS = landmarks.find(({ name }) => name === 'start of release')!.timeS;
  const nearPeakS = landmarks.find(({ name }) => name === 'near peak')?.timeS ?? startOfReleaseS;
  const plateau = stretch(registered, nearPeakS, startOfReleaseS);
  let peakLevel = Math.max(...plateau.of(levels));
  for (let round = 1; ; round++) {
    const fit = fitRise({ levels, fromS, stepS, nearPeakS, peakLevel });
    const rise = { ...fit, durationS: Math.min(fit.durationS, startOfReleaseS - fit.startS) };
    const falling = fallingPhases(registered, rise.startS + rise.durationS, restingLevel);
    if (round === ROUNDS) return { rise, falling };
    peakLevel = falling.peakLevel;
  }
}

function phasesOf({ startS, durationS, shape }: FittedRise, falling: FallingPhases): LevelPhases {
  const { startOfReleaseS, brakeOffS, peakLevel } = falling;
  const length = brakeOffS - startOfReleaseS;
  const knots = falling.knots.map(({ x, y }) => ({
    x: (x - startOfReleaseS) / length,
    y: y / peakLevel,
  }));
  return {
    rise: { length: durationS, shape },
    peakLevel,
    hold: Math.max(0, startOfReleaseS - startS - durationS),
    bleed: null,
    // a straight fall needs no knot, and a file no empty list of them
    release: { length, shape: knots.length === 0 ? { kind: 'linear' } : { kind: 'knots', knots } },
  };
}

/** A part of the common grid, both ends included. */
interface GridPart {
  readonly from: number;
  of(curve: Float64Array): Float64Array;
}

function stretch(
  { fromS, stepS, mean: all }: RegisteredReps,
  startS: number,
  endS: number,
): GridPart {
  const from = Math.max(0, Math.round((startS - fromS) / stepS));
  const to = Math.min(all.length, Math.round((endS - fromS) / stepS) + 1);
  return { from, of: (curve) => curve.subarray(from, to) };
}

/** Turn-in, and the mean angle at equal steps from there to brake off, each rep on its own time. */
function turningOf(
  reps: readonly LearnRep[],
  { landmarks, warps }: RegisteredReps,
  { startS }: FittedRise,
  { brakeOffS }: FallingPhases,
): Pick<LearnedCurve, 'turnInS' | 'steering'> {
  const turnInS = landmarks.find(({ name }) => name === 'turn-in')?.timeS ?? null;
  if (turnInS === null) return { turnInS, steering: [] };
  const steering = Array.from({ length: STEERING_KNOTS }, (_, k) => {
    const timeS = turnInS + ((brakeOffS - turnInS) * k) / (STEERING_KNOTS - 1);
    const angles = reps.map(
      (rep, i) => resample(rep.steering!, rep.landmarksS.onset + warps[i]!(timeS), 1, 1)[0]!,
    );
    return { x: timeS - startS, y: mean(angles)! };
  });
  const straight = straightBefore(steering);
  return { turnInS: straight.x, steering: [straight, ...steering] };
}

/** The wheel counts as turned in when it is some way in: drawn on backwards, it left the middle here. */
function straightBefore([first, second]: readonly Knot[]): Knot {
  if (first === undefined || second === undefined) throw new RangeError('no steering');
  const perS = (second.y - first.y) / (second.x - first.x);
  const backS = first.y / perS;
  return { x: first.x - (backS > 0 ? Math.min(LONGEST_BACK_S, backS) : LONGEST_BACK_S), y: 0 };
}

function rootMeanSquare(a: Float64Array, b: Float64Array): number {
  return Math.sqrt(a.reduce((sum, value, i) => sum + (value - b[i]!) ** 2, 0) / a.length);
}
