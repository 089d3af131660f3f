import { chartReading } from '../../consistency/weeks/chart-reading.ts';
import {
  headline,
  hiddenTrendSentence,
  lastDaySentence,
  trendSentence,
} from '../../consistency/weeks/headline.ts';
import { practiceSentences } from '../../consistency/weeks/practice-sentences.ts';
import type { WeeksProgress } from '../../consistency/weeks/weeks-progress.ts';
import { type LatestSpread, spreadReading } from '../../drill/diagnosis/spread-curve.ts';
import { isVaried } from '../../drill/plan/varied-target.ts';
import { cleanText } from '../../input/discovery/clean-text.ts';
import { countText } from '../../number-text.ts';
import type { TextUnits } from '../../unit-text.ts';
import { controlChart } from './control-chart.ts';
import { dayTable } from './day-table.ts';
import { spreadChart } from './spread-chart.ts';
import { weekChart, weekParts } from './week-chart.ts';
import { wrapWords } from './wrap-words.ts';

/** Reps of a varied target have a target each: rows of them would be as many breaks. */
const VARIED_REPS =
  'Varied reps: each has a target of its own, so that they train and measure nothing over time.';

/**
 * The progress of drivers on targets as lines of at most 80 columns: two sentences first, then the weeks and the
 * control chart and the spread curve with a reading each, then the days.
 *
 * @param mostRows of weeks and of days; the newest are shown
 * @param spreads one of each series; without any, that picture is left out
 */
export function progressText(
  all: readonly WeeksProgress[],
  mostRows: number,
  spreads: readonly LatestSpread[] = [],
  units: TextUnits = 'metric',
): string {
  const parts = all.flatMap((progress, i) => {
    if (isVaried(progress.targetId)) return [...title(progress), ...wrapWords(VARIED_REPS), ''];
    const sentence = [headline(progress), lastDaySentence(progress)].flatMap((line) =>
      wrapWords(line),
    );
    // where there are several, each sentence says first whose it is
    const own = title(progress);
    const head = all.length > 1 ? [...own, ...sentence] : [...sentence, ...own];
    return [...head, '', ...seriesLines(progress, mostRows, spreadLines(spreads[i], units)), ''];
  });
  return `${[...parts, ...legend(all)].join('\n')}\n`;
}

function spreadLines(latest: LatestSpread | undefined, units: TextUnits): string[] {
  if (latest === undefined) return [];
  if (latest.kind === 'none')
    return [...wrapWords(`Spread along the target: ${cleanText(latest.reason, 200)}.`), ''];
  const reading = wrapWords(`Reading: ${spreadReading(latest.curve)}`);
  return [...spreadChart(latest.curve, units), ...reading, ''];
}

function seriesLines(
  progress: WeeksProgress,
  mostRows: number,
  spread: readonly string[],
): string[] {
  const chart = controlChart(progress.chart);
  return [
    // cut after gaps are taken together: a long rest must not push all that was driven off the page
    ...weekChart(weekParts(progress.weeks).slice(-mostRows)),
    ...wrapWords(`Reading: ${trendSentence(progress)} ${hiddenTrendSentence(progress)}`),
    '',
    ...chart,
    ...wrapWords(
      `${chart.length === 0 ? 'Control chart' : 'Reading'}: ${chartReading(progress.chart)}`,
    ),
    ...practiceSentences(progress).flatMap((sentence) => wrapWords(sentence)),
    '',
    ...spread,
    ...dayTable(progress.days.slice(-mostRows)),
    ...leftOut(progress, mostRows),
  ];
}

function title({
  driver,
  targetId,
  foot,
  condition,
  source,
  days,
}: WeeksProgress): readonly string[] {
  const reps = days.reduce((sum, day) => sum + day.reps, 0);
  const dates = new Set(days.map(({ day }) => day)).size;
  const counts = `${countText(reps, 'rep')} on ${countText(dates, 'day')}`;
  const how = [`${foot} foot`, condition, source === 'hid' ? null : source];
  const words = how.flatMap((word) => (word === null ? [] : [cleanText(word, 10)])).join(', ');
  return wrapWords(`${cleanText(targetId)}, ${cleanText(driver)} (${words}): ${counts}`);
}

function leftOut({ weeks, days }: WeeksProgress, mostRows: number): string[] {
  if (Math.max(weekParts(weeks).length, days.length) <= mostRows) return [];
  return [`Only the last ${mostRows} rows are shown; \`--weeks N\` shows all of N weeks.`];
}

function legend(all: readonly WeeksProgress[]): string[] {
  const days = all.flatMap((progress) => progress.days);
  const warmUp = days.some((day) => day.warmUp > 0);
  const lost = days.reduce((sum, day) => sum + day.deviceLost, 0);
  return [
    'Scores compare only within one target version. Nothing is averaged across a line',
    'that says what changed. % is of full scale, + is heavy. Medians and averages are',
    'given from 8 reps on, the spread (standard deviation from rep to rep) from 10:',
    '"5 of 8" is what there is, a week needs 5. Timing is that of the start of release.',
    "The spread here is that of a rep's average error; along the target, and after a block, it is that of the trace, which is more.",
    'In the table by day "first" are first-of-day reps; they are not among the hidden.',
    ...(warmUp ? ['Warm-up reps are counted, but are in no median, average or spread.'] : []),
    ...(lost > 0 ? [`Left out because a device was lost: ${countText(lost, 'rep')}.`] : []),
  ].flatMap((line) => wrapWords(line));
}
