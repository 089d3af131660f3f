import { risingLine } from './rising-line.ts';

/** How an error may fall with practice. */
export type PracticeFamily = 'exponential' | 'power' | 'constant';

/** What is left of the gain at a place in practice, 1 at the first. */
export const GAIN_LEFT: Readonly<
  Record<'exponential' | 'power', (place: number, rate: number) => number>
> = {
  exponential: (place, rate) => Math.exp(-rate * (place - 1)),
  power: (place, rate) => place ** -rate,
};

/** By which the share that is left falls with the rate, as a factor of it: d left / d rate = -factor * left. */
const FALL: Readonly<Record<'exponential' | 'power', (place: number) => number>> = {
  exponential: (place) => place - 1,
  power: (place) => Math.log(place),
};

/** How plateau + gain * left changes with plateau, gain and rate at each place. */
export function practiceSlopes(
  family: 'exponential' | 'power',
  places: ArrayLike<number>,
): (parameters: ArrayLike<number>) => Float64Array[] {
  const left = GAIN_LEFT[family];
  const falls = Float64Array.from(places, FALL[family]);
  return (parameters) => {
    const [gain, rate] = [parameters[1]!, parameters[2]!];
    const [shares, byRate] = [new Float64Array(falls.length), new Float64Array(falls.length)];
    for (let i = 0; i < falls.length; i++) {
      const share = left(places[i]!, rate);
      shares[i] = share;
      byRate[i] = -gain * falls[i]! * share;
    }
    return [new Float64Array(falls.length).fill(1), shares, byRate];
  };
}

/** The slowest and the fastest that can be told from standing still and from a jump at the first place. */
export const LEAST_RATE = 1e-4;
export const LARGEST_RATE = 5;

const RATES = 24;

/**
 * Starts for plateau, gain and rate: for a rate the two others, none of them negative, follow by linear least squares
 * (variable projection, Golub and Pereyra 1973, SIAM Journal on Numerical Analysis 10:413), so that only the rates need
 * to be tried. One start for each valley among them: from within a valley every start comes to the same place.
 */
export function practiceStarts(
  family: 'exponential' | 'power',
  places: readonly number[],
  values: readonly number[],
): number[][] {
  const rates = Array.from(
    { length: RATES },
    (_, i) => LEAST_RATE * (LARGEST_RATE / LEAST_RATE) ** (i / (RATES - 1)),
  );
  const lines = rates.map((rate) =>
    risingLine(
      places.map((place) => GAIN_LEFT[family](place, rate)),
      values,
    ),
  );
  return lines.flatMap(({ atZero, slope, residualSquares }, i) => {
    const [before, after] = [lines[i - 1], lines[i + 1]];
    // of a floor that is level only where it begins
    const isDown = before === undefined || residualSquares < before.residualSquares;
    const isLeast = isDown && residualSquares <= (after?.residualSquares ?? residualSquares);
    return isLeast ? [[atZero, slope, rates[i]!]] : [];
  });
}
