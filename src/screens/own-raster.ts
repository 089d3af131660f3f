import type { Track } from '../trace/track.ts';
import { createRaster, type DotRaster, setSpan } from './dot-raster.ts';
import type { PlotScale } from './plot-scale.ts';

/**
 * The driver's own trace as a solid line two dots thick: in each column everything between the lowest and the
 * highest value that held there. It ends at `untilS`, or at its last sample where that is later.
 */
export function ownRaster({ timeS, value }: Track, scale: PlotScale, untilS: number): DotRaster {
  return solidRaster(timeS, value, scale, untilS);
}

/** The same of any values that hold from one time or place, ascending, to the next. */
export function solidRaster(
  along: Float64Array,
  value: Float64Array,
  scale: PlotScale,
  until: number,
): DotRaster {
  const raster = createRaster({ cols: scale.dotCols / 2, rows: scale.dotRows / 4 });
  const end = Math.max(until, along.at(-1) ?? Number.NEGATIVE_INFINITY);
  let from = scale.at(0);
  let next = firstAfter(along, from);
  for (let x = 0; x < scale.dotCols && from <= end; x++) {
    const edge = scale.at(x + 1);
    let low = next > 0 ? value[next - 1]! : Number.POSITIVE_INFINITY;
    let high = next > 0 ? low : Number.NEGATIVE_INFINITY;
    for (; next < along.length && along[next]! < edge; next++) {
      low = Math.min(low, value[next]!);
      high = Math.max(high, value[next]!);
    }
    if (low <= high) drawLevels(raster, scale, x, low, high);
    from = edge;
  }
  return raster;
}

/** A value beyond the picture is drawn at its edge, so that the trace is never out of sight. */
function drawLevels(raster: DotRaster, scale: PlotScale, x: number, low: number, high: number) {
  const top = Math.max(0, scale.dotY(high));
  const bottom = Math.min(scale.dotRows - 1, Math.max(0, scale.dotY(low)));
  setSpan(raster, x, bottom === top ? Math.max(0, top - 1) : top, Math.max(bottom, 1));
}

function firstAfter(along: Float64Array, limit: number): number {
  let low = 0;
  for (let high = along.length; low < high; ) {
    const middle = (low + high) >> 1;
    if (along[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
