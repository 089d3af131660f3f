import { countText, signed } from '../../number-text.ts';
import type { FeltAgreement } from '../felt-agreement.ts';
import { isoWeek } from '../iso-week.ts';
import type { FeltTrend, FeltWeek } from './felt-trend.ts';
import type { WeekTrend } from './week-trend.ts';

/** What the driver felt against what was measured, now and over weeks; nothing for who never said what was felt. */
export function feltSentences({ all, weeks, ...trends }: FeltTrend): string[] {
  if (all.ratings === 0) return [];
  return KINDS.flatMap((kind) => [
    `Felt against measured ${kind}: ${agreementText(all, kind)}`,
    ...(all[kind] === null
      ? []
      : [`Felt ${kind} over weeks: ${trendText(trends[kind], weeks, kind)}`]),
  ]);
}

const KINDS = ['timing', 'amount'] as const;
type Kind = (typeof KINDS)[number];

function agreementText({ ratings, needed, ...found }: FeltAgreement, kind: Kind): string {
  const [agreement, more] = [found[kind], needed - ratings];
  if (agreement !== null)
    return `agreement ${agreement.kappa.toFixed(2)} (1 always, 0 chance) in ${ratings} rated reps.`;
  return more > 0
    ? `${ratings} rated reps, missing ${more} more before it can be said.`
    : `nothing to tell, the ${ratings} rated reps are all alike.`;
}

function trendText(
  { verdict, missing, line, weeks: count }: WeekTrend,
  weeks: readonly FeltWeek[],
  kind: Kind,
): string {
  const needed = weeks[0]?.needed;
  if (verdict === null || line === null)
    return `no trend yet, ${countText(missing, 'more week')} with ${needed} rated reps or more.`;
  const { low, high, level } = line.slopeInterval;
  const between = `${signed(low, 2)} to ${signed(high, 2)}, ${Math.round(100 * level)} %`;
  const ends = weeks.filter((week) => week[kind] !== null);
  const last = ends.at(-1)!;
  return `${verdict}, agreement ${signed(line.slope, 2)} a week (${between}) over ${count} weeks; ${last[kind]!.kappa.toFixed(2)} in ${isoWeek(last.monday)}.`;
}
