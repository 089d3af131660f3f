import type { Target } from '../target/target.ts';
import { createRaster, type DotRaster, setDot } from './dot-raster.ts';
import type { PlotScale } from './plot-scale.ts';

const DASH_DOTS = 6;
const GAP_DOTS = 2;
const CORRIDOR_STEP_DOTS = 4;

type Along = (at: number) => number;

/** The target's level as a dashed line. */
export function targetRaster(target: Target, scale: PlotScale): DotRaster {
  return dashedRaster((at) => target.level.at(at), scale);
}

/** A function of time or place as a dashed line. */
export function dashedRaster(valueAt: Along, scale: PlotScale): DotRaster {
  const raster = rasterFor(scale);
  let previous = scale.dotY(valueAt(scale.at(0)));
  let drawn = 0;
  for (let x = 0; x < scale.dotCols; x++) {
    const last = scale.dotY(valueAt(scale.at(x + 0.5)));
    const step = Math.sign(last - previous);
    // A steep line stays one dot wide, and its dashes are as long as those of a flat one.
    for (let y = previous; y !== last; ) {
      y += step;
      if (drawn++ % (DASH_DOTS + GAP_DOTS) < DASH_DOTS) setDot(raster, x, y);
    }
    if (step === 0 && drawn++ % (DASH_DOTS + GAP_DOTS) < DASH_DOTS) setDot(raster, x, last);
    previous = last;
  }
  return raster;
}

/** Both edges of the target's corridor as sparse dots. */
export function corridorRaster(target: Target, scale: PlotScale): DotRaster {
  return edgesRaster(
    (at) => target.level.at(at),
    (at) => target.corridorAt(at),
    scale,
  );
}

/** Both edges of a band around a level as sparse dots; the lower edge ends where it reaches level 0. */
export function edgesRaster(levelAt: Along, halfAt: Along, scale: PlotScale): DotRaster {
  const raster = rasterFor(scale);
  for (let x = 1; x < scale.dotCols; x += CORRIDOR_STEP_DOTS) {
    const at = scale.at(x + 0.5);
    const level = levelAt(at);
    const half = halfAt(at);
    setDot(raster, x, scale.dotY(level + half));
    if (level > half) setDot(raster, x, scale.dotY(level - half));
  }
  return raster;
}

/** Empty dots for the whole of a plot. */
export function rasterFor(scale: PlotScale): DotRaster {
  return createRaster({ cols: scale.dotCols / 2, rows: scale.dotRows / 4 });
}
