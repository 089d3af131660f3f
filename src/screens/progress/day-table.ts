import { estimateText } from '../../consistency/estimate.ts';
import type { PracticeDay } from '../../consistency/practice-day.ts';
import { fixed, signedTenths, tenths } from '../../number-text.ts';
import { breakLine } from './break-line.ts';

interface Column {
  readonly head: readonly [string, string, string];
  readonly width: number;
  cell(day: PracticeDay): string;
}

const REPS: Column = { head: ['', '', 'reps'], width: 4, cell: ({ reps }) => String(reps) };
const COUNTS: Column = {
  head: ['shown/', 'hidden/', 'first'],
  width: 9,
  cell: ({ shown, hidden, firstOfDay }) => `${shown}/${hidden}/${firstOfDay}`,
};

const TABLE: readonly Column[] = [
  { head: ['', '', 'day'], width: -10, cell: ({ day }) => day },
  REPS,
  COUNTS,
  {
    head: ['median', 'score', '0..100'],
    width: 6,
    cell: ({ medianScore }) => estimateText(medianScore, (score) => fixed(score, 0)),
  },
  {
    head: ['median', 'release', 'error %'],
    width: 7,
    cell: ({ medianReleaseErrorLevel }) => estimateText(medianReleaseErrorLevel, tenths),
  },
  {
    head: ['', 'average', 'error %'],
    width: 7,
    cell: ({ averageErrorLevel }) => estimateText(averageErrorLevel, signedTenths),
  },
  {
    head: ['spread', 'of it', '%'],
    width: 7,
    cell: ({ amountSpreadLevel }) => estimateText(amountSpreadLevel, tenths),
  },
  {
    head: ['spread', 'timing', 'ms'],
    width: 7,
    cell: ({ timingSpreadS }) => estimateText(timingSpreadS, (s) => fixed(1000 * s, 0)),
  },
  { head: ['', '', 'of n'], width: 4, cell: ({ measured }) => String(measured) },
  {
    head: ['re-', 'app-', 'lied'],
    width: 4,
    cell: ({ reapplicationsPerRep: times }) => (times === null ? '-' : fixed(times, 1)),
  },
  { head: ['', 'abor-', 'ted'], width: 5, cell: ({ aborted }) => String(aborted) },
];

/** Days of very many reps: what they add up to makes room for how many there were of each kind. */
const FULL_DAYS: readonly Column[] = TABLE.flatMap((column) => {
  if (column === REPS) return [];
  return column === COUNTS ? [{ ...COUNTS, width: COUNTS.width + REPS.width + 1 }] : [column];
});

/** Practice days as a table of at most 80 columns, with a line wherever a row does not compare with the one before. */
export function dayTable(days: readonly PracticeDay[]): string[] {
  const columns = days.some((day) => COUNTS.cell(day).length > COUNTS.width) ? FULL_DAYS : TABLE;
  const rows = days.flatMap((day, i) => [
    ...breakBefore(day, days[i - 1]),
    line(columns.map((column) => pad(column.cell(day), column.width))),
  ]);
  const head = [0, 1, 2].map((row) => line(columns.map((c) => pad(c.head[row]!, c.width))));
  return [...head, ...rows];
}

function breakBefore(day: PracticeDay, before: PracticeDay | undefined): string[] {
  if (before === undefined || day.changed.length === 0) return [];
  return [breakLine(day.changed, before.conditions, day.conditions, null)];
}

/** A negative width is for words, which stand on the left. */
function pad(text: string, width: number): string {
  return width < 0 ? text.padEnd(-width) : text.padStart(width);
}

function line(cells: readonly string[]): string {
  return cells.join(' ').trimEnd();
}
