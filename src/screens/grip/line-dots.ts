import type { Size } from '../cell-grid.ts';
import { createRaster, type DotRaster, setDot } from '../dot-raster.ts';

/** A place on the dots of an area, from its top left. */
export interface Dot {
  readonly x: number;
  readonly y: number;
}

/** How a line through places looks: dots drawn, then dots left out, and how many dots it is thick. */
export interface Stroke {
  readonly on: number;
  readonly off: number;
  readonly thick: 1 | 2;
}

export const THICK: Stroke = { on: 1, off: 0, thick: 2 };
export const THIN: Stroke = { on: 1, off: 0, thick: 1 };
export const DASHED: Stroke = { on: 5, off: 3, thick: 1 };
export const DOTTED: Stroke = { on: 1, off: 1, thick: 1 };
export const SPARSE: Stroke = { on: 1, off: 2, thick: 1 };

/** A line through places in their order, whichever way it turns. */
export function lineDots(places: readonly Dot[], size: Size, stroke: Stroke): DotRaster {
  const raster = createRaster(size);
  let drawn = 0;
  const put = (x: number, y: number): void => {
    if (drawn++ % (stroke.on + stroke.off) >= stroke.on) return;
    for (let dx = 0; dx < stroke.thick; dx++)
      for (let dy = 0; dy < stroke.thick; dy++) setDot(raster, x + dx, y + dy);
  };
  let last = places[0];
  if (last === undefined) return raster;
  put(Math.round(last.x), Math.round(last.y));
  for (const next of places.slice(1)) {
    const to = { x: Math.round(next.x), y: Math.round(next.y) };
    const from = { x: Math.round(last.x), y: Math.round(last.y) };
    const steps = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y));
    for (let i = 1; i <= steps; i++)
      put(
        Math.round(from.x + ((to.x - from.x) * i) / steps),
        Math.round(from.y + ((to.y - from.y) * i) / steps),
      );
    last = to;
  }
  return raster;
}
