import { countText } from '../../number-text.ts';
import type { ChartPoint, PracticeChart } from './practice-chart.ts';

/** What a control chart says, in one sentence. */
export function chartReading(chart: PracticeChart): string {
  if (chart.limits === null) {
    const more = chart.missingPractices;
    return `No limits yet: ${countText(more, 'more practice')} with eight hidden reps or more.`;
  }
  const later = chart.points.filter(({ isBaseline }) => !isBaseline);
  const warning = chart.isAutocorrelated
    ? ' Neighbours among the first ten are alike, so that the limits may be too narrow.'
    : '';
  return `${later.length === 0 ? 'The limits are set; the next practice is the first to be judged.' : judgement(later)}${warning}`;
}

/** Every signal by name, with the practice it belongs to; those of sums and means with the one they began with. */
function judgement(later: readonly ChartPoint[]): string {
  const found = [single(later), since(later, ...SUMS), since(later, ...MEANS)].filter(
    (words) => words !== null,
  );
  if (found.length === 0)
    return `No signal: all ${later.length} practices since the limits were set are ordinary scatter.`;
  return `${found.length === 1 ? 'Signal' : 'Signals'}: ${found.join('; ')}.`;
}

/** Of the newest practice, or else of the last one that was out of the ordinary. */
function single(later: readonly ChartPoint[]): string | null {
  const outside = later.filter(({ signal }) => signal !== null);
  const last = outside.at(-1);
  if (last === undefined) return null;
  if (last === later.at(-1)) return `the last practice, ${last.day}, is ${WORDS[last.signal!]}`;
  return `${last.day} was ${WORDS[last.signal!]} (${outside.length} of ${later.length} practices so; the last is ordinary)`;
}

/** A signal that the newest practice is in, and the practice it began with. */
function since(
  later: readonly ChartPoint[],
  sideOf: (point: ChartPoint) => Side | null,
  name: string,
): string | null {
  const side = sideOf(later.at(-1)!);
  if (side === null) return null;
  const start = later.findLastIndex((point) => sideOf(point) !== side) + 1;
  return `${name} since ${later[start]!.day}: ${SIDES[side]} than the first ten practices`;
}

type Side = 'high' | 'low';
const SIDES = { high: 'worse', low: 'better' } as const;

const SUMS = [
  ({ sums }: ChartPoint): Side | null => sums?.signal ?? null,
  'small differences add up (CUSUM)',
] as const;

const MEANS = [
  ({ weighted }: ChartPoint): Side | null => {
    if (weighted === null) return null;
    if (weighted.value > weighted.upper) return 'high';
    return weighted.value < weighted.lower ? 'low' : null;
  },
  'the weighted mean is outside its limits (EWMA)',
] as const;

const WORDS: Readonly<Record<NonNullable<ChartPoint['signal']>, string>> = {
  'above limits': 'above the limits, worse than scatter explains',
  'below limits': 'below the limits, better than scatter explains',
  'eight above': 'the eighth or later in a row above the centre, a lasting change for the worse',
  'eight below': 'the eighth or later in a row below the centre, a lasting change for the better',
};
