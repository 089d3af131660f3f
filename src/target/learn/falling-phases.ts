import type { Knot } from '../../curve/monotone-cubic.ts';
import { fitKnots } from '../derive/fit-knots.ts';
import { chooseSmoothing, type Smoothing } from './choose-smoothing.ts';
import { fallingFit } from './falling-fit.ts';
import type { RegisteredReps } from './register-reps.ts';
import { smoothingSpline } from './smoothing-spline.ts';

/** From the peak on. Seconds after the onset. */
export interface FallingPhases {
  readonly smoothing: Smoothing;
  readonly peakLevel: number;
  readonly startOfReleaseS: number;
  readonly brakeOffS: number;
  /** Between start of release and brake off; `x` in seconds after the onset, `y` as a level. */
  readonly knots: readonly Knot[];
}

/** So little below the peak the release has begun; a third of the narrowest corridor. */
const BEGUN_LEVEL = 0.004;
/** The last of the fall is drawn on in a straight line: there the pedal is at rest, and sensors differ. */
const TAIL_LEVELS = [0.03, 0.015] as const;
const LONGEST_TAIL_S = 0.15;
const AFTER_OFF_S = 0.25;
const MOST_KNOTS = 20;

/**
 * The mean from the end of the rise on: smoothed, made to fall all the way, and put into few knots.
 *
 * @param riseEndS where the push is over, seconds after the onset
 * @param restingLevel of the foot off the brake
 */
export function fallingPhases(
  { fromS, stepS, curves, mean, landmarks }: RegisteredReps,
  riseEndS: number,
  restingLevel: number,
): FallingPhases {
  const offS = landmarks.find(({ name }) => name === 'brake off')!.timeS;
  const from = Math.max(0, Math.ceil((riseEndS - fromS) / stepS));
  const to = Math.min(mean.length, Math.ceil((offS + AFTER_OFF_S - fromS) / stepS));
  const smoothing = chooseSmoothing(
    curves.map((curve) => curve.subarray(from, to)),
    stepS,
  );
  const smooth = smoothingSpline(mean.slice(from, to), stepS, smoothing.penaltyS3);
  const falling = fallingFit(smooth);
  const timeS = (i: number): number => fromS + (from + i) * stepS;
  const peakLevel = Math.min(1, falling[0]!);
  const begun = falling.findIndex((level) => level < peakLevel - BEGUN_LEVEL);
  const first = Math.max(0, begun - 1);
  const tail = TAIL_LEVELS.map((level) => crossing(falling, restingLevel + level));
  const [highS, lowS] = [fromS + (from + tail[0]!) * stepS, fromS + (from + tail[1]!) * stepS];
  const share = TAIL_LEVELS[1] / (TAIL_LEVELS[0] - TAIL_LEVELS[1]);
  const brakeOffS = lowS + Math.min(LONGEST_TAIL_S, share * (lowS - highS));
  const points: Knot[] = [{ x: timeS(first), y: peakLevel }];
  for (let i = first + 1; timeS(i) < lowS; i++) points.push({ x: timeS(i), y: falling[i]! });
  points.push({ x: brakeOffS, y: 0 });
  return {
    smoothing,
    peakLevel,
    startOfReleaseS: timeS(first),
    brakeOffS,
    knots: fitKnots(points, MOST_KNOTS),
  };
}

/** Fractional place at which a falling curve reaches a level; its end where it never does. */
function crossing(falling: Float64Array, level: number): number {
  const i = falling.findIndex((value) => value <= level);
  if (i <= 0) return i < 0 ? falling.length - 1 : 0;
  const [before, after] = [falling[i - 1]!, falling[i]!];
  return i - 1 + (before - level) / (before - after);
}
