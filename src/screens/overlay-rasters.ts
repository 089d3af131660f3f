import { type DotRaster, rasterOf, setDot, setSpan } from './dot-raster.ts';
import type { PlotScale } from './plot-scale.ts';
import { rasterFor } from './target-raster.ts';

type Along = (at: number) => number;

/** A function of time or place as a solid line one dot thin. */
export function thinRaster(valueAt: Along, scale: PlotScale): DotRaster {
  const raster = rasterFor(scale);
  let previous = scale.dotY(valueAt(scale.at(0)));
  for (let x = 0; x < scale.dotCols; x++) {
    const y = scale.dotY(valueAt(scale.at(x + 0.5)));
    const step = Math.sign(y - previous);
    setSpan(raster, x, step === 0 ? y : previous + step, y);
    previous = y;
  }
  return raster;
}

/** What lies between two functions as a shade of one dot in four. */
export function shadeRaster(lowAt: Along, highAt: Along, scale: PlotScale): DotRaster {
  const raster = rasterFor(scale);
  for (let x = 0; x < scale.dotCols; x++) {
    const at = scale.at(x + 0.5);
    if (lowAt(at) >= highAt(at)) continue;
    const bottom = Math.min(scale.dotRows - 1, scale.dotY(lowAt(at)));
    for (let y = Math.max(0, scale.dotY(highAt(at))); y <= bottom; y++)
      if ((x + 2 * y) % 4 === 0) setDot(raster, x, y);
  }
  return raster;
}

/** All dots of both. */
export function together(a: DotRaster, b: DotRaster): DotRaster {
  return rasterOf(
    a,
    a.dots.map((dots, cell) => dots | b.dots[cell]!),
  );
}

/** Lines with the shade that they cross: a cell has one pen, and without it the shade would end at every line. */
export function within(lines: DotRaster, shade: DotRaster): DotRaster {
  const dots = lines.dots.map((own, cell) => (own === 0 ? 0 : own | shade.dots[cell]!));
  return rasterOf(lines, dots);
}
