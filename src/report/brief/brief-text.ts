import { printable } from '../../profile/printable.ts';
import { LONGEST_LINE } from '../longest-line.ts';
import type { Brief, BriefCorner } from './brief.ts';
import { wrapped } from './wrapped.ts';

const COLS = 80;
const NAME_COLS = 18;

/** The brief for a terminal of 80 columns: nothing in it steers the terminal. */
export function briefText({ title, subtitle, corners, cautions }: Brief): string {
  const lines = [
    ...wrapped(safe(title), COLS),
    ...wrapped(safe(subtitle), COLS),
    ...corners.flatMap((corner) => ['', ...cornerLines(corner)]),
    '',
    ...cautions.flatMap((caution) => wrapped(safe(caution), COLS)),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

function cornerLines({ title, subtitle, numbers, sections }: BriefCorner): string[] {
  const rows = [...numbers.map(({ name, value }) => ({ name, lines: [value] })), ...sections];
  return [
    ...wrapped(`== ${safe(title)} (${safe(subtitle)})`, COLS),
    ...rows.flatMap(({ name, lines }) =>
      lines
        .flatMap((line) => wrapped(safe(line), COLS - NAME_COLS))
        .map((line, i) => `${(i === 0 ? safe(name) : '').padEnd(NAME_COLS)}${line}`),
    ),
  ];
}

function safe(text: string): string {
  return printable(text, LONGEST_LINE);
}
