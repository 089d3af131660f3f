import { BIG_ROWS } from '../big-number.ts';
import type { Area, Size } from '../cell-grid.ts';
import { SCALE_COLS } from '../plot-axes.ts';

/** Where the parts of the approach stand; single rows are given by their row. */
export interface StripLayout {
  /** How large big letters and digits are, 1 for the smallest. */
  readonly scale: number;
  readonly call: number;
  /** The coach's word. */
  readonly above: number;
  readonly numbers: number;
  readonly posts: { readonly top: number; readonly bottom: number };
  readonly base: number;
  /** Words of the other marks. */
  readonly below: number;
  /** The number of the next board, and room for it to grow. */
  readonly beat: Area;
}

const CALL_ROW = 2;
const TOP_ROW = 3;
/** Base line, places, names of the marks. */
const BELOW_LANE = 3;
const NOTE_ROWS = 2;

/** The approach: little else stands on the screen. */
export function stripLayout({ cols, rows }: Size): StripLayout {
  const roomy = rows >= 40 && cols >= 150;
  const scale = roomy ? 2 : 1;
  const above = CALL_ROW + BIG_ROWS * scale;
  const top = above + 2;
  const base = top + (roomy ? 6 : 3);
  return {
    scale,
    call: CALL_ROW,
    above,
    numbers: above + 1,
    posts: { top, bottom: base - 1 },
    base,
    below: base + 1,
    beat: { x: 1, y: base + 2, cols: cols - 2, rows: rows - base - 2 },
  };
}

/** Where the parts of the picture over distance stand. */
export interface ZoneLayout {
  readonly headings: number;
  /** Scales stand left of it and in three rows below. */
  readonly level: Area;
  readonly steeringHeading: number;
  readonly steering: Area;
  /** Numbers of the car, then the result. */
  readonly side: Area;
  /** From above; takes the place of the lanes where the screen has no room for both. */
  readonly plan: Area;
  readonly planBeside: boolean;
  /** What happened, and what has to be said. */
  readonly notes: Area;
  readonly reps: Area;
  readonly health: number;
  readonly keys: number;
}

/** Rows of the result where the plan view stands below it; on a tall screen with room for two large words. */
const RESULT_ROWS = 15;
const TALL_RESULT_ROWS = 27;
const TALL_ROWS = 56;

export function zoneLayout({ cols, rows }: Size): ZoneLayout {
  const planBeside = rows >= 40 && cols >= 120;
  const space = rows >= 40 ? 1 : 0;
  const repRows = 1 + (rows >= 40 ? 5 : rows >= 30 ? 3 : 2);
  const health = rows - 2;
  const reps = health - space - repRows;
  const notes = reps - space - NOTE_ROWS;
  const steeringRows = rows >= 40 ? 8 : 3;
  const steering = notes - space - steeringRows;
  const sideX = cols - 1 - (cols >= 120 ? 52 : 24);
  const laneCols = sideX - 2 - (SCALE_COLS + 1);
  const side: Area = { x: sideX, y: TOP_ROW, cols: cols - 1 - sideX, rows: notes - TOP_ROW };
  const lane = { x: SCALE_COLS + 1, cols: laneCols };
  const resultRows = rows >= TALL_ROWS ? TALL_RESULT_ROWS : RESULT_ROWS;
  const below = TOP_ROW + resultRows + 1;
  return {
    headings: TOP_ROW - 1,
    level: { ...lane, y: TOP_ROW, rows: steering - 1 - BELOW_LANE - TOP_ROW },
    steeringHeading: steering - 1,
    steering: { ...lane, y: steering, rows: steeringRows },
    side: planBeside ? { ...side, rows: resultRows } : side,
    plan: planBeside
      ? { ...side, y: below, rows: notes - space - below }
      : { x: 1, y: TOP_ROW, cols: sideX - 2, rows: notes - TOP_ROW },
    planBeside,
    notes: { x: 1, y: notes, cols: cols - 2, rows: NOTE_ROWS },
    reps: { x: 1, y: reps, cols: cols - 2, rows: repRows },
    health,
    keys: rows - 1,
  };
}
