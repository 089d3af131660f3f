import type { ChartPoint, PracticeChart } from './practice-chart.ts';

/** What a control chart says, in one sentence. */
export function chartReading(chart: PracticeChart): string {
  if (chart.limits === null) {
    const more = chart.missingPractices;
    return `No limits yet: ${more} more practice${more === 1 ? '' : 's'} with eight hidden reps or more.`;
  }
  const later = chart.points.filter(({ isBaseline }) => !isBaseline);
  const warning = chart.isAutocorrelated
    ? ' Neighbours among the first ten are alike, so that the limits may be too narrow.'
    : '';
  return `${later.length === 0 ? 'The limits are set; the next practice is the first to be judged.' : judgement(later)}${warning}`;
}

function judgement(later: readonly ChartPoint[]): string {
  const newest = later.at(-1)!;
  if (newest.signal !== null) return `The last practice, ${newest.day}: ${WORDS[newest.signal]}.`;
  const sum = newest.sums?.signal ?? null;
  if (sum !== null) return `Small differences add up: ${SIDES[sum]} than the first ten practices.`;
  const weighted = newest.weighted;
  if (weighted !== null && weighted.value > weighted.upper)
    return `The weighted mean has left its limits: ${SIDES.high} than the first ten practices.`;
  if (weighted !== null && weighted.value < weighted.lower)
    return `The weighted mean has left its limits: ${SIDES.low} than the first ten practices.`;
  const outside = later.filter(({ signal }) => signal !== null);
  if (outside.length === 0)
    return `All ${later.length} practices since the limits were set are ordinary scatter.`;
  const last = outside.at(-1)!;
  return `The last practice is ordinary; out of the ordinary were ${outside.length}, last ${last.day}: ${WORDS[last.signal!]}.`;
}

const SIDES = { high: 'worse', low: 'better' } as const;

const WORDS: Readonly<Record<NonNullable<ChartPoint['signal']>, string>> = {
  'above limits': 'above the limits, worse than scatter explains',
  'below limits': 'below the limits, better than scatter explains',
  'eight above': 'the eighth or later in a row above the centre, a lasting change for the worse',
  'eight below': 'the eighth or later in a row below the centre, a lasting change for the better',
};
