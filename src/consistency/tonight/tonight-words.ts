import { percentText } from '../../number-text.ts';
import type { CauseKind } from '../../score/rep-score.ts';
import type { SharedTrouble } from '../../score/trouble/shared-troubles.ts';
import { daysBetween } from '../days-between.ts';
import { REPS_FOR_MEDIAN, REPS_FOR_SPREAD } from '../estimate.ts';
import { REPS_FOR_WEEK } from '../weeks/week-rows.ts';
import type { CornerForm } from './corner-form.ts';
import type { CornerRanking, RankedCorner } from './rank-corners.ts';

/** A corner with all that is told of it. */
export interface CornerTonight {
  readonly form: CornerForm;
  /** What its newest reps share that costs most; empty for nothing. */
  readonly troubles: readonly SharedTrouble[];
  /** What their releases share, be it the dearest or not; null for nothing. */
  readonly cause: CauseKind | null;
  /** Reps that both were looked for in. */
  readonly newestReps: number;
  /** Median time to the slowest point behind the target's, of the same reps; null where none is known. */
  readonly timeLostS: number | null;
}

/** Why there is no proposal, or fewer corners than an evening has room for; null where there is nothing to say. */
export function whyFewer({ tonight, notRanked }: CornerRanking<CornerTonight>): string | null {
  if (notRanked.length === 0) return null;
  const reps = `${REPS_FOR_SPREAD} hidden reps, two or more in a practice`;
  const names = notRanked.map(({ form }) => `${form.name} (${repsText(form)})`).join(', ');
  const what =
    tonight.length === 0 ? 'Not enough reps to rank any corner' : 'Not enough reps to rank';
  return `${what}: it takes ${reps}. ${tonight.length === 0 ? 'So far' : 'Left out'}: ${names}.`;
}

function repsText({ hiddenReps, spreadReps }: CornerForm): string {
  return String(hiddenReps < REPS_FOR_MEDIAN ? hiddenReps : Math.min(hiddenReps, spreadReps));
}

/** Why a corner is worth the evening, largest part first of what is expected to be lost, then what its reps share, time and rest. */
export function reasonOf({ corner, tiedWith }: RankedCorner<CornerTonight>, today: string): string {
  const { form, troubles, newestReps, timeLostS } = corner;
  return [
    `a first lap is expected ${percentText(form.expectedErrorLevel!, 1)} off: ${partsText(form)}`,
    ...troubles.map(({ words, reps }) => `${words} in ${reps} of the last ${newestReps} reps`),
    ...(timeLostS === null || timeLostS < 0.005
      ? []
      : [`${timeLostS.toFixed(2)} s lost to the slowest point`]),
    ...restText(form, today),
    ...(tiedWith === null ? [] : [tieText(form, tiedWith.form)]),
  ].join('; ');
}

function partsText(form: CornerForm): string {
  const { releaseErrorLevel, hiddenReps, spreadLevel, firstOfDayLossLevel, firstOfDayReps } = form;
  const first =
    firstOfDayLossLevel === null
      ? `first-of-day loss not known (${firstOfDayReps} of ${REPS_FOR_WEEK} reps)`
      : `first-of-day loss ${percentText(firstOfDayLossLevel, 1)}`;
  return [
    `release error ${percentText(releaseErrorLevel!, 1)} in ${hiddenReps} hidden reps`,
    `spread ${percentText(spreadLevel!, 1)}`,
    first,
  ].join(', ');
}

function restText({ lastDay }: CornerForm, today: string): string[] {
  const days = lastDay === null ? 0 : daysBetween(lastDay, today);
  if (days < 1) return [];
  return [`${days} ${days === 1 ? 'day' : 'days'} not practised`];
}

function tieText({ lastDay }: CornerForm, other: CornerForm): string {
  const by = lastDay === other.lastDay ? 'earlier in the lap' : 'left alone for longer';
  return `level with ${other.name}, ${by}`;
}
