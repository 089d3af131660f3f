import type { DrillView } from '../../drill/drill-view.ts';
import type { CellGrid } from '../cell-grid.ts';
import { drawHealth } from '../health-line.ts';
import { DRILL_KEYS } from '../key-help.ts';
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
  writeText(grid, 1, keys, DRILL_KEYS, look.theme.quiet);
}
