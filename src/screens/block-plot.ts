import type { Overlay } from '../drill/diagnosis/block-diagnosis.ts';
import type { BlockGrid } from '../drill/diagnosis/block-grid.ts';
import type { Area, CellGrid } from './cell-grid.ts';
import { type DotRaster, paintRaster } from './dot-raster.ts';
import type { Look } from './look.ts';
import { drawMarks, type Mark } from './mark-labels.ts';
import { shadeRaster, thinRaster, together, within } from './overlay-rasters.ts';
import { solidRaster } from './own-raster.ts';
import { drawAxes } from './plot-axes.ts';
import { type PlotScale, plotScale } from './plot-scale.ts';
import { dashedRaster } from './target-raster.ts';
import { writeText } from './write-text.ts';

/** Rows below the plot: base line, seconds, names of the phases' ends. */
export const BELOW_BLOCK_PLOT = 3;

/**
 * The reps of a block over each other in thin lines, the target in dashes, the mean in bold and one standard deviation
 * either way of it as a shade; scales and key points stand around `area`.
 */
export function drawBlockPlot(grid: CellGrid, area: Area, overlay: Overlay, look: Look): void {
  const { grid: places, reps, mean } = overlay;
  const endS = places.fromS + (places.target.length - 1) * places.stepS;
  const highest = Math.max(...[places.target, ...reps].map((curve) => Math.max(...curve)));
  const window = { fromS: places.fromS, toS: endS, topLevel: 1.1 * highest };
  const scale = plotScale(window, area);
  const { theme, unicode } = look;
  const plain = (character: string): string | null => (unicode ? null : character);
  const on = (curve: Float64Array) => levelAt(curve, places);
  drawAxes(grid, area, window, scale, look);
  drawMarks(grid, area, scale, marksOf(places), look);
  const shade = shadeOf(overlay, scale);
  paintRaster(grid, area, shade, theme.quiet, plain(':'));
  const lines = reps.map((rep) => thinRaster(on(rep), scale));
  if (lines.length > 0)
    paintRaster(grid, area, within(lines.reduce(together), shade), theme.text, plain('.'));
  paintRaster(grid, area, dashedRaster(on(places.target), scale), theme.target, plain('-'));
  if (mean === null) return;
  const along = mean.map((_, i) => places.fromS + i * places.stepS);
  const bold = solidRaster(along, mean, scale, Number.NEGATIVE_INFINITY);
  paintRaster(grid, area, bold, theme.driver, plain('#'));
}

/** One standard deviation either way of the mean; nothing where no spread is known. */
function shadeOf({ grid, mean, spread }: Overlay, scale: PlotScale): DotRaster {
  const edge = (side: number): ((timeS: number) => number) =>
    mean === null || spread === null
      ? () => 0
      : levelAt(
          mean.map((level, i) => level + side * spread[i]!),
          grid,
        );
  return shadeRaster(edge(-1), edge(1), scale);
}

/** What each kind of line is. */
export function drawBlockLegend(
  grid: CellGrid,
  row: number,
  { reps, spread }: Overlay,
  { theme, unicode }: Look,
): void {
  let x = writeText(grid, 1, row, 'brake, % of full scale  ', theme.quiet);
  x = writeText(grid, x, row, unicode ? '╌╌ target ' : '-- target ', theme.target);
  if (reps.length > 0) {
    x = writeText(grid, x, row, unicode ? '── reps ' : '.. reps ', theme.text);
    x = writeText(grid, x, row, unicode ? '━━ mean ' : '## mean ', theme.driver);
  }
  if (spread !== null)
    writeText(
      grid,
      x,
      row,
      unicode ? '░░ mean and one spread' : ':: mean and one spread',
      theme.quiet,
    );
}

function levelAt(curve: Float64Array, { fromS, stepS }: BlockGrid): (timeS: number) => number {
  const last = curve.length - 1;
  return (timeS) => curve[Math.min(last, Math.max(0, Math.round((timeS - fromS) / stepS)))]!;
}

function marksOf({ phases, fromS, stepS }: BlockGrid): readonly Mark[] {
  const at = (place: number): number => fromS + place * stepS;
  return [
    { at: at(phases.hit.to), name: 'start of release' },
    { at: at(phases['100 to 50 %'].to), name: '50 %' },
    { at: at(phases['50 to 10 %'].to), name: '10 %' },
    { at: at(phases['last 10 %'].to), name: 'brake off' },
  ];
}
