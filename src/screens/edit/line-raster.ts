import { createRaster, type DotRaster, setSpan } from '../dot-raster.ts';
import type { PlotScale } from '../plot-scale.ts';

/** A function of time or place as a line two dots thick. */
export function lineRaster(valueAt: (at: number) => number, scale: PlotScale): DotRaster {
  const raster = createRaster({ cols: scale.dotCols / 2, rows: scale.dotRows / 4 });
  let last = scale.dotY(valueAt(scale.at(0)));
  for (let x = 0; x < scale.dotCols; x++) {
    const next = scale.dotY(valueAt(scale.at(x + 0.5)));
    setSpan(raster, x, Math.min(last, next), Math.max(last, next) + 1);
    last = next;
  }
  return raster;
}
