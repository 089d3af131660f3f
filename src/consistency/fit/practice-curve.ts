import { mean } from '../mean.ts';
import { correctedInformation } from './corrected-information.ts';
import { type CurveProblem, residuals, sumOfSquares } from './curve-problem.ts';
import { fitCurve } from './fit-curve.ts';
import {
  GAIN_LEFT,
  LARGEST_RATE,
  LEAST_RATE,
  type PracticeFamily,
  practiceSlopes,
  practiceStarts,
} from './practice-family.ts';
import { standardErrors } from './standard-errors.ts';

/** One curve through the points: plateau + gain times what is left of it. */
interface PracticeFit {
  readonly family: PracticeFamily;
  /** Where the curve ends if practice goes on; of the constant its value. */
  readonly plateau: number;
  /** Standard error of it; null of the constant, or where it cannot be told. */
  readonly plateauError: number | null;
  /** By how much the first place lies above it; null of the constant. */
  readonly gain: number | null;
  readonly rate: number | null;
  readonly residualSquares: number;
  /** Corrected information criterion; the smaller, the better. */
  readonly information: number;
}

/** What the points say of practice. */
export interface PracticeCurve {
  readonly points: number;
  /** Best first. */
  readonly fits: readonly PracticeFit[];
  /** Null where the next best is too near to tell them apart. */
  readonly chosen: PracticeFit | null;
  /** Null below the points it takes, or where no falling curve was chosen. */
  readonly plateau: number | null;
  /** Points still missing before a plateau may be shown. */
  readonly missingForPlateau: number;
}

/** Below this difference of the information criteria nothing is decided (Burnham and Anderson 2002, 2.6). */
const CLEAR_DIFFERENCE = 2;
/** Of 20 points with common noise one fitted plateau in seven is far off; of 12 one in three, of 8 two in three. */
const POINTS_FOR_PLATEAU = 20;
/** Fewest that the correction of the criterion allows for three parameters. */
const LEAST_POINTS = 6;

/**
 * Chooses between an exponential, a power curve and no change, for one driver on one target: averages over drivers
 * look like a power curve whatever each of them does (Murre and Chessa 2011). Plateau and gain are not negative. Null
 * of fewer than six points.
 *
 * @param places in practice, from 1, rising
 * @param values errors that practice should make smaller
 */
export function practiceCurve(
  places: readonly number[],
  values: readonly number[],
): PracticeCurve | null {
  if (values.length < LEAST_POINTS) return null;
  const fits = [
    fall('exponential', places, values),
    fall('power', places, values),
    constant(values),
  ]
    .flatMap((fit) => fit ?? [])
    .sort((a, b) => a.information - b.information);
  const [best, next] = fits;
  const isClear =
    best !== undefined &&
    (next === undefined || next.information - best.information > CLEAR_DIFFERENCE);
  const chosen = isClear ? best : null;
  const isShown = chosen !== null && chosen.gain !== null && values.length >= POINTS_FOR_PLATEAU;
  return {
    points: values.length,
    fits,
    chosen,
    plateau: isShown ? chosen.plateau : null,
    missingForPlateau: Math.max(0, POINTS_FOR_PLATEAU - values.length),
  };
}

function fall(
  family: 'exponential' | 'power',
  places: readonly number[],
  values: readonly number[],
): PracticeFit | null {
  const left = GAIN_LEFT[family];
  const problem: CurveProblem = {
    x: places,
    y: values,
    model: (place, p) => p[0]! + p[1]! * left(place, p[2]!),
    slopes: practiceSlopes(family, places),
    lower: [0, 0, LEAST_RATE],
    upper: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, LARGEST_RATE],
  };
  const found = fitCurve(problem, practiceStarts(family, places, values));
  if (found === null) return null;
  const information = correctedInformation(
    aboveRounding(found.residualSquares, values),
    values.length,
    3,
  );
  if (information === null) return null;
  const [plateau, gain, rate] = found.parameters;
  return {
    family,
    plateau: plateau!,
    plateauError: standardErrors(problem, found.parameters)?.[0] ?? null,
    gain: gain!,
    rate: rate!,
    residualSquares: found.residualSquares,
    information,
  };
}

function constant(values: readonly number[]): PracticeFit | null {
  const plateau = mean(values)!;
  const problem = { x: values, y: values, model: () => plateau };
  const residualSquares = sumOfSquares(residuals(problem, []));
  const information = correctedInformation(
    aboveRounding(residualSquares, values),
    values.length,
    1,
  );
  if (information === null) return null;
  return {
    family: 'constant',
    plateau,
    plateauError: null,
    gain: null,
    rate: null,
    residualSquares,
    information,
  };
}

/** A curve through all points up to rounding is perfect, and no more perfect than another one. */
function aboveRounding(residualSquares: number, values: readonly number[]): number {
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-100);
  return Math.max(residualSquares, values.length * (1e-10 * largest) ** 2);
}
