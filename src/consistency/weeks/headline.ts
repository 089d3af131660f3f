import { countText, signed, tenths } from '../../number-text.ts';
import type { SpreadChange } from '../change/spread-change.ts';
import { progressSentence } from '../progress-sentence.ts';
import type { WeekTrend } from './week-trend.ts';
import type { WeeksProgress } from './weeks-progress.ts';

/**
 * One sentence: whether the spread is smaller than four weeks ago, with how much and from how many reps, or what is
 * missing before that can be said.
 */
export function headline(progress: WeeksProgress): string {
  const { amount, brokenOn } = progress.spread;
  if (amount.verdict !== null) return claimed(amount);
  const missing = missingText(amount, brokenOn);
  return `Not known yet whether the spread changed in four weeks: ${missing}.`;
}

/** Whether first-of-day reps get better: what an out-lap gets, and what is learned for good. */
export function trendSentence({ firstOfDayTrend }: WeeksProgress): string {
  return sentenceOf('First-of-day reps', firstOfDayTrend);
}

/** The same of the other hidden reps, which are warm: practice, and no promise of what is kept. */
export function hiddenTrendSentence({ hiddenTrend }: WeeksProgress): string {
  return sentenceOf('Hidden reps', hiddenTrend);
}

function sentenceOf(name: string, trend: WeekTrend): string {
  if (trend.verdict === null) return `${name}: no trend yet, ${weeksMissing(trend)}.`;
  const warning = trend.isAutocorrelated
    ? ' Neighbouring weeks are alike: chance looks like a trend more often than the level says.'
    : '';
  return `${name}: ${trend.verdict}, release error ${slopeText(trend)} over ${trend.weeks} weeks.${warning}`;
}

/** Whether the foot erred to one side on the last day, or what is missing before that can be said. */
export function lastDaySentence({ days }: WeeksProgress): string {
  return progressSentence(days);
}

function claimed({ before, now, ratioInterval, verdict, hangsOnOne }: SpreadChange): string {
  const [was, is] = [tenths(before.deviation!), tenths(now.deviation!)];
  const between = `${shareText(ratioInterval!.low)} to ${shareText(ratioInterval!.high)}`;
  const counts = `${before.reps} and ${now.reps} hidden reps`;
  const level = `${Math.round(100 * ratioInterval!.level)} %`;
  if (verdict === 'no clear change')
    return `No clear change: spread ${was} % of full scale four weeks ago, ${is} % now (${between} with ${level} confidence); ${counts}.${hangsOnOne ? ' What looks like a change hangs on one practice.' : ''}`;
  const [word, way] = verdict === 'improving' ? ['Improving', 'down'] : ['Worsening', 'up'];
  return `${word}: spread is ${way} from ${was} to ${is} % of full scale in four weeks (${between} with ${level} confidence); ${counts}.`;
}

function missingText({ before, now }: SpreadChange, brokenOn: string | null): string {
  const parts = [
    ...(now.missing > 0 ? [`${hiddenReps(now.missing)} of the last two weeks`] : []),
    ...(before.missing > 0 ? [`${hiddenReps(before.missing)} of four weeks before`] : []),
  ];
  if (parts.length === 0) return 'the reps of one side are all the same';
  const why = brokenOn === null ? '' : ` (reps before ${brokenOn} do not compare)`;
  return `missing are ${parts.join(' and ')}${why}`;
}

function hiddenReps(count: number): string {
  return countText(count, 'hidden rep');
}

function weeksMissing({ missing }: WeekTrend): string {
  return `${countText(missing, 'more week')} with five such reps or more`;
}

/** Slope per week with its interval, in % of full scale. */
function slopeText({ line }: WeekTrend): string {
  const { slope, slopeInterval } = line!;
  const text = (levelPerWeek: number): string => signed(100 * levelPerWeek, 2);
  const level = `${Math.round(100 * slopeInterval.level)} %`;
  return `${text(slope)} % of full scale a week (${text(slopeInterval.low)} to ${text(slopeInterval.high)}, ${level})`;
}

/** A ratio as the share by which it is less or more, for example `38 % less`. */
function shareText(ratio: number): string {
  const percent = Math.round(100 * Math.abs(ratio - 1));
  if (percent === 0) return 'the same';
  return `${percent} % ${ratio < 1 ? 'less' : 'more'}`;
}
