/** Length of road that the strip shows ahead of the bar, m. */
const AHEAD_M = 150;
/** Parts into which block characters divide a cell. */
export const EIGHTHS = 8;
/** Columns left of the bar, where marks that were passed leave the strip. */
const BEHIND_COLS = 6;
const RIGHT_MARGIN = 1;

/** Where places along the road fall on the strip: the same metres in every cell, from the bar on. */
export interface StripScale {
  /** Column of the bar; its right edge is where the car is. */
  readonly barX: number;
  readonly metresPerCell: number;
  /** Eighths of a cell from the left edge of the screen to a place that is `aheadM` ahead of the car. */
  eighths(aheadM: number): number;
}

/** The strip across a screen of that many columns. */
export function stripScale(cols: number): StripScale {
  const barX = BEHIND_COLS;
  const metresPerCell = AHEAD_M / (cols - barX - 1 - RIGHT_MARGIN);
  return {
    barX,
    metresPerCell,
    eighths: (aheadM) => (barX + 1) * EIGHTHS + Math.round((aheadM / metresPerCell) * EIGHTHS),
  };
}
