import type { RepLine } from '../drill/drill-view.ts';
import type { Area, CellGrid } from './cell-grid.ts';
import type { Look } from './look.ts';
import { countText, tidy, wholePercentText } from './number-text.ts';
import { fitText, writeText } from './write-text.ts';

/** Columns of the list: heading, width, cell. A part of the score is 100 % where nothing more can be asked. */
const COLUMNS: readonly {
  readonly heading: string;
  readonly width: number;
  cell(rep: RepLine): string;
}[] = [
  { heading: 'rep', width: 5, cell: (rep) => String(rep.number) },
  { heading: 'score', width: 8, cell: scoreCell },
  { heading: 'release', width: 9, cell: (rep) => partCell(rep, 'release') },
  { heading: 'hit', width: 7, cell: (rep) => partCell(rep, 'hit') },
  { heading: 'smooth', width: 8, cell: (rep) => partCell(rep, 'smooth') },
  { heading: 're-applied', width: 12, cell: reappliedCell },
];

/** The last reps, newest first, under a heading. */
export function drawRepList(
  grid: CellGrid,
  area: Area,
  reps: readonly RepLine[],
  { theme }: Look,
): void {
  const heading = COLUMNS.map((column) => column.heading.padEnd(column.width)).join('');
  writeText(grid, area.x, area.y, `${heading}in words`, theme.quiet);
  reps.slice(0, area.rows - 1).forEach((rep, index) => {
    const cells = COLUMNS.map((column) => column.cell(rep).padEnd(column.width)).join('');
    writeText(
      grid,
      area.x,
      area.y + 1 + index,
      fitText(cells + wordsOf(rep), area.cols),
      theme.text,
    );
  });
}

function scoreCell(rep: RepLine): string {
  if (rep.voided !== null) return 'void';
  return rep.outcome === null ? '··' : `${tidy(rep.outcome.score, 0)}/100`;
}

function partCell(rep: RepLine, part: 'release' | 'hit' | 'smooth'): string {
  return rep.outcome?.kind === 'scored' ? wholePercentText(rep.outcome.parts[part]) : '';
}

function reappliedCell(rep: RepLine): string {
  return rep.outcome?.kind === 'scored' ? countText(rep.outcome.reapplications, 'time') : '';
}

/** Why there is no score, or what the drill has to say. */
function wordsOf(rep: RepLine): string {
  if (rep.voided !== null) return rep.voided;
  if (rep.outcome === null) return `${rep.feedback}, score held back`;
  if (rep.sentence !== '') return rep.sentence;
  return rep.outcome.kind === 'no-rep' ? rep.outcome.reason : 'in band';
}
