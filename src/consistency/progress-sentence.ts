import { tenths } from '../number-text.ts';
import type { Estimate } from './estimate.ts';
import type { PracticeDay } from './practice-day.ts';

/**
 * Whether the foot errs to one side in the newest row or only differs from rep to rep, or what is not known yet, in one
 * sentence of at most 80 characters. It claims no change over time: that takes statistics that this summary does not
 * hold.
 */
export function progressSentence(days: readonly PracticeDay[]): string {
  const last = days.at(-1);
  if (last === undefined) return 'There is no rep yet.';
  const { medianScore, medianReleaseErrorLevel, averageErrorLevel, amountSpreadLevel } = last;
  if (medianScore.value === null)
    return `Nothing can be said of ${last.day}: a day's median takes ${inPlaceOf(medianScore)}.`;
  if (medianReleaseErrorLevel.value === null || averageErrorLevel.value === null)
    return `The score is known, errors not: with a release they take ${inPlaceOf(medianReleaseErrorLevel)}.`;
  if (amountSpreadLevel.value === null)
    return `The level is known, the spread is not: a day's takes ${inPlaceOf(amountSpreadLevel)}.`;
  return sideText(last.day, averageErrorLevel.value, amountSpreadLevel.value);
}

/** A foot that errs more to one side than its reps differ needs another aim, else it needs practice. */
function sideText(day: string, averageLevel: number, spreadLevel: number): string {
  const average = tenths(Math.abs(averageLevel));
  const spread = tenths(spreadLevel);
  const side = averageLevel < 0 ? 'light' : 'heavy';
  const than = Number(average) > Number(spread) ? 'more than' : 'within what';
  return `${day}: ${average} % of full scale ${side}, ${than} reps differ (${spread} %).`;
}

/** The newest day may be over: reps of another day cannot be added to it. */
function inPlaceOf({ reps, needed }: Estimate): string {
  return `${needed} reps, not ${reps}`;
}
