import type { Estimate } from '../../consistency/estimate.ts';
import type { WeekErrors, WeekRow } from '../../consistency/weeks/week-rows.ts';
import { fixed } from '../../number-text.ts';
import { breakLine } from './break-line.ts';

const PLOT = 38;
/** So many weeks without practice in a row are one line. */
const LONG_GAP = 3;

/**
 * Weeks from top to bottom, the error to the right, at most 80 columns; gaps and breaks stand where they were.
 *
 * @param parts by `weekParts`
 */
export function weekChart(parts: readonly WeekPart[]): string[] {
  const weeks = parts.flat();
  // an axis without a mark on it says nothing, and its end would be made up
  if (!weeks.some(hasMark))
    return ['By week: none has five hidden reps or five first-of-day reps.'];
  const most = scaleEnd(weeks);
  return [
    'Median release error by week, % of full scale: o hidden reps with --- its',
    'interval, x first-of-day reps, * both; the spread is that of hidden reps.',
    `${''.padEnd(9)}${axis(most)} ${'hidden'.padStart(11)} ${'first'.padStart(9)} spread`,
    ...parts.flatMap((part) => partLines(part, most)),
  ];
}

function hasMark({ hidden, firstOfDay }: WeekRow): boolean {
  return [hidden, firstOfDay].some((kind) => kind.medianReleaseErrorLevel.value !== null);
}

/** A week, or weeks without practice one after the other. */
type WeekPart = WeekRow | readonly WeekRow[];

/** Weeks without practice that follow each other are taken together. */
export function weekParts(rows: readonly WeekRow[]): readonly WeekPart[] {
  const parts: (WeekRow | WeekRow[])[] = [];
  for (const row of rows) {
    const last = parts.at(-1);
    if (row.reps > 0 || row.changed.length > 0) parts.push(row);
    else if (Array.isArray(last)) last.push(row);
    else parts.push([row]);
  }
  return parts;
}

function partLines(part: WeekPart, most: number): string[] {
  if (!isGap(part)) return [...breakBefore(part), weekLine(part, most)];
  const [first, last] = [part[0]!, part.at(-1)!];
  if (part.length > LONG_GAP)
    return [`${first.week}  to ${last.week}: ${part.length} weeks without practice`];
  return part.map(({ week }) => `${week}  no practice`);
}

function isGap(part: WeekPart): part is readonly WeekRow[] {
  return Array.isArray(part);
}

function breakBefore({ changed, changedOn, before, conditions }: WeekRow): string[] {
  if (changed.length === 0 || before === null || conditions === null) return [];
  return [breakLine(changed, before, conditions, changedOn)];
}

function weekLine(row: WeekRow, most: number): string {
  const cells = new Array<string>(PLOT).fill(' ');
  const place = (level: number): number =>
    Math.min(PLOT - 1, Math.max(0, Math.round((level / most) * (PLOT - 1))));
  const { interval } = row.hidden;
  if (interval !== null) cells.fill('-', place(interval.low), place(interval.high) + 1);
  mark(cells, row.hidden, place, 'o');
  mark(cells, row.firstOfDay, place, 'x');
  const numbers = `${counted(row.hidden).padStart(11)} ${counted(row.firstOfDay).padStart(9)}`;
  return `${row.week} |${cells.join('')}| ${numbers} ${known(row.spreadLevel).padStart(6)}`;
}

function mark(
  cells: string[],
  { medianReleaseErrorLevel: { value } }: WeekErrors,
  place: (level: number) => number,
  sign: string,
): void {
  if (value === null) return;
  const at = place(value);
  cells[at] = cells[at] === 'o' ? '*' : sign;
}

function axis(most: number): string {
  const end = fixed(100 * most, 1);
  return `0${end.padStart(PLOT + 1)}`;
}

/** The end of the longest interval or the largest median, rounded up to 1, 2 or 5 times a power of ten. */
function scaleEnd(rows: readonly WeekRow[]): number {
  const ends = rows.flatMap(({ hidden, firstOfDay }) => [
    hidden.interval?.high ?? 0,
    firstOfDay.medianReleaseErrorLevel.value ?? 0,
  ]);
  const largest = ends.reduce((most, end) => Math.max(most, end), 0.001);
  const power = 10 ** Math.floor(Math.log10(largest));
  return [1, 2, 5, 10].map((step) => step * power).find((end) => end >= largest) ?? largest;
}

function counted({ medianReleaseErrorLevel }: WeekErrors): string {
  const { reps } = medianReleaseErrorLevel;
  return reps === 0 ? '-' : `${known(medianReleaseErrorLevel)} (${reps})`;
}

function known({ value }: Estimate): string {
  return value === null ? '?' : fixed(100 * value, 1);
}
