import type { Area, CellGrid } from './cell-grid.ts';
import { type DotRaster, paintRaster } from './dot-raster.ts';
import type { Look } from './look.ts';
import type { PlotScale } from './plot-scale.ts';

/** A target in dots: its level, and both edges of the corridor around it. */
export interface TargetRasters {
  readonly level: DotRaster;
  /** Null where there is none. */
  readonly corridor: DotRaster | null;
}

/** What of a target is to be seen. */
interface SeenTarget {
  /** False to leave the corridor out. */
  readonly corridor: boolean;
  /** Time or place where it ends. */
  readonly until: number;
}

/** Paints a target, the level over its corridor. */
export function paintTarget(
  grid: CellGrid,
  area: Area,
  { level, corridor }: TargetRasters,
  scale: PlotScale,
  seen: SeenTarget,
  { theme, unicode }: Look,
): void {
  const end = scale.dotX(seen.until);
  if (corridor !== null && seen.corridor)
    paintRaster(grid, area, corridor, theme.target, unicode ? null : '.', end);
  paintRaster(grid, area, level, theme.target, unicode ? null : '-', end);
}
