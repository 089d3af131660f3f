import type { Target } from '../target/target.ts';
import { type Area, type CellGrid, putCell } from './cell-grid.ts';
import type { Look } from './look.ts';
import { columnOf, type PlotScale, plotScale } from './plot-scale.ts';
import type { PlotWindow } from './plot-window.ts';
import { remembered } from './remembered.ts';
import { laySheet, sheetOf } from './sheet.ts';
import { textWidth, writeText } from './write-text.ts';

/** A key point at a time or place. */
export interface Mark {
  readonly at: number;
  readonly name: string;
}

/** A name and the column it belongs to. */
export interface PlacedMark {
  readonly column: number;
  readonly name: string;
}

/** Key points of a target that a plot names, in the order of time: the same list for the same target. */
export const marksOf: (target: Target) => readonly Mark[] = remembered((target: Target) => {
  const { startOfRelease, turnIn, apex, brakeOff } = target.marks;
  const marks = [
    { at: startOfRelease, name: 'start of release' },
    { at: turnIn, name: 'turn-in' },
    { at: apex, name: 'apex' },
    { at: brakeOff, name: 'brake off' },
  ];
  return marks.filter((mark): mark is Mark => mark.at !== null).toSorted((a, b) => a.at - b.at);
});

/** `drawMarks` on the scale of a plot of level over time, where window and marks stand still. */
export function layMarks(
  grid: CellGrid,
  area: Area,
  window: PlotWindow,
  marks: readonly Mark[],
  look: Look,
): void {
  const { cols, rows } = grid;
  laySheet(grid, marksSheet(cols, rows, area, window, marks, look));
}

const marksSheet = remembered(
  (
    cols: number,
    rows: number,
    area: Area,
    window: PlotWindow,
    marks: readonly Mark[],
    look: Look,
  ) =>
    sheetOf({ cols, rows }, (grid) => drawMarks(grid, area, plotScale(window, area), marks, look)),
);

/** A mark for each key point on the base line and its name two rows below, under the seconds. */
export function drawMarks(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  marks: readonly Mark[],
  { theme }: Look,
): void {
  const right = area.x + area.cols;
  const placed = mergeMarks(
    marks
      .map(({ at, name }) => ({ column: columnOf(scale, area, at), name }))
      .filter(({ column }) => column >= area.x && column < right),
  );
  const starts = spreadNames(placed, area.x, right);
  placed.forEach(({ column, name }, index) => {
    putCell(grid, column, area.y + area.rows, '▲'.codePointAt(0)!, theme.target);
    writeText(grid, starts[index]!, area.y + area.rows + 2, name, theme.target);
  });
}

/** Marks that fall in one column share a name. */
function mergeMarks(marks: readonly PlacedMark[]): readonly PlacedMark[] {
  const merged: PlacedMark[] = [];
  for (const mark of marks) {
    const last = merged.at(-1);
    if (last?.column === mark.column)
      merged[merged.length - 1] = { ...last, name: `${last.name}, ${mark.name}` };
    else merged.push(mark);
  }
  return merged;
}

/** First columns of the names: each under its mark where it can be, in order, never touching. */
export function spreadNames(
  marks: readonly PlacedMark[],
  left: number,
  right: number,
): readonly number[] {
  const starts: number[] = [];
  let free = left;
  for (const { column, name } of marks) {
    const start = Math.max(free, column - (textWidth(name) >> 1));
    starts.push(start);
    free = start + textWidth(name) + 2;
  }
  let limit = right;
  for (let index = marks.length - 1; index >= 0; index--) {
    const width = textWidth(marks[index]!.name);
    starts[index] = Math.min(starts[index]!, limit - width);
    limit = starts[index]! - 2;
  }
  return starts;
}
