import type { RepLine } from '../drill/drill-view.ts';
import { countText, fixed, percentText } from '../number-text.ts';
import type { LiveMeasures } from '../score/live-measures.ts';
import type { Area, CellGrid } from './cell-grid.ts';
import { brakePointText, slowestText } from './live/live-errors.ts';
import type { Look } from './look.ts';
import { remembered } from './remembered.ts';
import { laySheet, sheetOf } from './sheet.ts';
import { fitText, textWidth, wrapText, writeText } from './write-text.ts';

interface Column {
  readonly heading: string;
  readonly width: number;
  cell(rep: RepLine, units: Look['units']): string;
}

/** Columns of the list. A part of the score is 100 % where nothing more can be asked. */
const COLUMNS: readonly Column[] = [
  { heading: 'rep', width: 5, cell: (rep) => String(rep.number) },
  { heading: 'score', width: 8, cell: scoreCell },
  { heading: 'release', width: 9, cell: (rep) => partCell(rep, 'release') },
  { heading: 'hit', width: 7, cell: (rep) => partCell(rep, 'hit') },
  { heading: 'smooth', width: 8, cell: (rep) => partCell(rep, 'smooth') },
  { heading: 're-applied', width: 12, cell: reappliedCell },
];

/** With the live car: where the brake came and how slow the car got, in place of what the sentence tells. */
const LIVE_COLUMNS: readonly Column[] = [
  { heading: 'rep', width: 4, cell: (rep) => String(rep.number) },
  { heading: 'score', width: 8, cell: scoreCell },
  { heading: 'release', width: 9, cell: (rep) => partCell(rep, 'release') },
  { heading: 'hit', width: 7, cell: (rep) => partCell(rep, 'hit') },
  { heading: 'smooth', width: 8, cell: (rep) => partCell(rep, 'smooth') },
  {
    heading: 'braked',
    width: 13,
    cell: (rep, units) => liveCell(rep, (live) => brakePointText(live, units)),
  },
  {
    heading: 'slowest',
    width: 10,
    cell: (rep, units) => liveCell(rep, (live) => slowestText(live, units)),
  },
];

/** What fits beside a sentence that can be read. */
const NARROW_LIVE_COLUMNS: readonly Column[] = LIVE_COLUMNS.filter(
  ({ heading }) => !['release', 'hit', 'smooth'].includes(heading),
);
const ROOMY_COLS = 100;

/** In a block of several targets: whose rep it is, in place of the parts that the sentence tells. */
const TARGET_COLUMN: Column = {
  heading: 'target',
  width: 17,
  cell: ({ targetName }) => fitText(targetName ?? '', 16),
};
const LEFT_OUT_FOR_TARGET: readonly string[] = ['hit', 'smooth'];

/** The last reps, newest first, under a heading. The newest says all it has to say; older ones keep to one row. */
export function drawRepList(
  grid: CellGrid,
  area: Area,
  reps: readonly RepLine[],
  look: Look,
  live = false,
): void {
  const { cols, rows } = grid;
  laySheet(grid, listSheet(cols, rows, area, reps, look, live));
}

const listSheet = remembered(
  (
    cols: number,
    rows: number,
    area: Area,
    reps: readonly RepLine[],
    { theme, units }: Look,
    live: boolean,
  ) =>
    sheetOf({ cols, rows }, (grid) => {
      const mixed = reps.some(({ targetName }) => targetName !== null);
      const columns = columnsOf(live, mixed, area.cols);
      const heading = columns.map((column) => column.heading.padEnd(column.width)).join('');
      writeText(grid, area.x, area.y, `${heading}in words`, theme.quiet);
      const room = area.rows - 1;
      const lines = reps
        .slice(0, room)
        .flatMap((rep, index) => repRows(rep, columns, units, area.cols, index === 0 ? room : 1));
      lines.slice(0, room).forEach((line, index) => {
        writeText(grid, area.x, area.y + 1 + index, line, theme.text);
      });
    }),
);

/** A rep in as many rows as its words need, cut with an ellipsis where there are fewer. */
function repRows(
  rep: RepLine,
  columns: readonly Column[],
  units: Look['units'],
  cols: number,
  rows: number,
): readonly string[] {
  const cells = columns.map((column) => column.cell(rep, units).padEnd(column.width)).join('');
  const left = textWidth(cells);
  const lines = wrapText(wordsOf(rep), cols - left);
  const fitting = Math.max(0, Math.min(lines.length, rows) - 1);
  const last = fitText(lines.slice(fitting).join(' '), cols - left);
  return [...lines.slice(0, fitting), last].map(
    (line, index) => (index === 0 ? cells : ' '.repeat(left)) + line,
  );
}

function columnsOf(live: boolean, mixed: boolean, cols: number): readonly Column[] {
  const narrow = cols < ROOMY_COLS;
  const columns = live ? (narrow ? NARROW_LIVE_COLUMNS : LIVE_COLUMNS) : COLUMNS;
  if (!mixed) return columns;
  const [rep, ...others] = columns;
  const kept = others.filter(({ heading }) => !narrow || !LEFT_OUT_FOR_TARGET.includes(heading));
  return [rep!, TARGET_COLUMN, ...kept];
}

function scoreCell(rep: RepLine): string {
  if (rep.voided !== null) return 'void';
  return rep.outcome === null ? '··' : `${fixed(rep.outcome.score, 0)}/100`;
}

function partCell(rep: RepLine, part: 'release' | 'hit' | 'smooth'): string {
  return rep.outcome?.kind === 'scored' ? percentText(rep.outcome.parts[part]) : '';
}

function liveCell(rep: RepLine, text: (live: LiveMeasures) => string): string {
  const live = rep.outcome?.kind === 'scored' ? rep.outcome.live : null;
  return live === null ? '' : text(live);
}

function reappliedCell(rep: RepLine): string {
  return rep.outcome?.kind === 'scored' ? countText(rep.outcome.reapplications, 'time') : '';
}

/** Why there is no score, or what the drill has to say; a late call first. */
function wordsOf(rep: RepLine): string {
  if (rep.voided !== null) return rep.voided;
  const called = rep.call === null ? '' : `${rep.call} call: `;
  if (rep.outcome === null) return `${called}${rep.feedback}, score held back`;
  if (rep.sentence !== '') return called + rep.sentence;
  return called + (rep.outcome.kind === 'no-rep' ? rep.outcome.reason : 'in band');
}
