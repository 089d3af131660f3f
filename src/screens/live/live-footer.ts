import type { DrillView } from '../../drill/drill-view.ts';
import type { CellGrid } from '../cell-grid.ts';
import { drawHealth } from '../health-line.ts';
import { drillKeys } from '../key-names.ts';
import type { Look } from '../look.ts';
import { writeText } from '../write-text.ts';

/** Devices and keys. */
export function drawFooter(
  grid: CellGrid,
  view: DrillView,
  health: number,
  keys: number,
  look: Look,
): void {
  drawHealth(grid, health, view, look);
  writeText(grid, 1, keys, drillKeys(view.buttons, grid.cols - 2), look.theme.quiet);
}
