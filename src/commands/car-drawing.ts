import type { Car } from '../car/car.ts';
import { topSpeedMps } from '../car/car-limits.ts';
import { type StraightLimit, straightLimit } from '../car/straight-limit.ts';
import { asciiFallback } from '../screens/ascii-fallback.ts';
import { type Area, type CellGrid, createGrid } from '../screens/cell-grid.ts';
import {
  createRaster,
  DOTS_ACROSS,
  DOTS_DOWN,
  paintRaster,
  setSpan,
} from '../screens/dot-raster.ts';
import { toText } from '../screens/grid-text.ts';
import type { Look } from '../screens/look.ts';
import { writeRight, writeText } from '../screens/write-text.ts';
import { forceText, speedText, type TextUnits } from '../unit-text.ts';

const COLS = 80;
const PLOT_ROWS = 6;
const LIMIT: Area = { x: 10, y: 1, cols: COLS - 12, rows: PLOT_ROWS };
const PEDAL: Area = { ...LIMIT, y: LIMIT.y + PLOT_ROWS + 2 };
const SPEEDS = 4;

/** Braking limit in g and pedal force at it, over speed, in 80 columns. */
export function carDrawing(car: Car, units: TextUnits, look: Look): string {
  const grid = createGrid({ cols: COLS, rows: PEDAL.y + PLOT_ROWS + 2 });
  const topMps = topSpeedMps(car);
  const count = LIMIT.cols * DOTS_ACROSS;
  const limits = Array.from({ length: count }, (_, x) =>
    straightLimit(car, (topMps * (x + 0.5)) / count),
  );
  drawCurve(grid, LIMIT, limits, look, {
    title: 'braking limit',
    value: ({ decelerationG }) => decelerationG,
    label: (value) => `${value.toFixed(1)} g`,
  });
  drawCurve(grid, PEDAL, limits, look, {
    title: 'pedal force at the limit',
    value: ({ pedalForceN }) => pedalForceN,
    label: (value) => forceText(value, units),
  });
  drawSpeeds(grid, topMps, units, look);
  if (!look.unicode) asciiFallback(grid);
  return toText(grid);
}

interface Drawn {
  readonly title: string;
  value(limit: StraightLimit): number;
  label(value: number): string;
}

/** One curve from 0 to its highest value, which stands beside the top. */
function drawCurve(
  grid: CellGrid,
  area: Area,
  limits: readonly StraightLimit[],
  look: Look,
  drawn: Drawn,
): void {
  const values = limits.map((limit) => drawn.value(limit));
  const top = Math.max(...values);
  const raster = createRaster(area);
  const rowOf = (value: number): number =>
    Math.round((1 - value / top) * (area.rows * DOTS_DOWN - 1));
  values.forEach((value, x) => {
    setSpan(raster, x, rowOf(values[x - 1] ?? value), rowOf(value));
  });
  writeText(grid, area.x, area.y - 1, drawn.title, look.theme.quiet);
  writeRight(grid, area.x - 2, area.y, drawn.label(top), look.theme.quiet);
  writeRight(grid, area.x - 2, area.y + area.rows - 1, '0', look.theme.quiet);
  paintRaster(grid, area, raster, look.theme.target, look.unicode ? null : '#');
}

function drawSpeeds(grid: CellGrid, topMps: number, units: TextUnits, look: Look): void {
  const axis = PEDAL.y + PEDAL.rows;
  writeText(grid, PEDAL.x - 1, axis, `└${'─'.repeat(PEDAL.cols)}`, look.theme.quiet);
  for (let i = 1; i <= SPEEDS; i++) {
    const column = PEDAL.x + Math.round((PEDAL.cols * i) / SPEEDS) - 1;
    writeText(grid, column, axis, '┬', look.theme.quiet);
    writeRight(grid, column, axis + 1, speedText((topMps * i) / SPEEDS, units), look.theme.quiet);
  }
}
