import { CONDITION_WORDS } from '../../consistency/condition-words.ts';
import { estimateText } from '../../consistency/estimate.ts';
import type { PracticeDay } from '../../consistency/practice-day.ts';
import { signedTenths, tenths } from '../../number-text.ts';
import type { DataTable } from '../picture/picture.ts';

/** The days as a table; what has too few reps says how many there are. */
export function dayTable(days: readonly PracticeDay[]): DataTable {
  return {
    heads: [
      'day',
      'reps',
      'shown/hidden/first',
      'median score',
      'median release error %',
      'average error %',
      'spread of it %',
      'spread of timing ms',
      're-applied',
      'aborted',
      'new',
    ],
    rows: days.map(dayRow),
  };
}

function dayRow(day: PracticeDay): readonly string[] {
  const { reapplicationsPerRep: times } = day;
  return [
    day.day,
    String(day.reps),
    `${day.shown}/${day.hidden}/${day.firstOfDay}`,
    estimateText(day.medianScore, (score) => String(Math.round(score))),
    estimateText(day.medianReleaseErrorLevel, tenths),
    estimateText(day.averageErrorLevel, signedTenths),
    estimateText(day.amountSpreadLevel, tenths),
    estimateText(day.timingSpreadS, (s) => String(Math.round(1000 * s))),
    times === null ? '-' : times.toFixed(1),
    String(day.aborted),
    day.changed.map((name) => CONDITION_WORDS[name]).join(', '),
  ];
}
