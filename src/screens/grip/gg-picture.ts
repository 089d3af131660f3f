import type { GgLimits } from '../../target/derive/gg-limits.ts';
import type { GripLimit } from '../../target/derive/grip-limit.ts';
import type { GripTrace } from '../../target/derive/grip-trace.ts';
import { type Area, type CellGrid, type Pen, putCell, type Size } from '../cell-grid.ts';
import { DOTS_ACROSS, DOTS_DOWN, paintRaster } from '../dot-raster.ts';
import type { Look } from '../look.ts';
import { drawGgAxes, GG_SCALE_COLS, GG_SCALE_ROWS } from './gg-axes.ts';
import { ggReading } from './gg-reading.ts';
import { type GgScale, ggScale, ggSpan } from './gg-scale.ts';
import {
  DASHED,
  DOTTED,
  type Dot,
  lineDots,
  SPARSE,
  type Stroke,
  THICK,
  THIN,
} from './line-dots.ts';
import { drawSideText, type SideLine } from './side-text.ts';
import { nearestIndex } from './trace-places.ts';

/** What a g-g diagram shows. */
export interface GgSubject {
  readonly limits: GgLimits;
  /** Null where the target is not to be seen. */
  readonly target: GripTrace | null;
  /** Thin, but for the last, which is thick: the newest rep. */
  readonly own: readonly GripTrace[];
  /** The speeds of the limits in words. */
  readonly speedText: (speedMps: number) => string;
}

/** Columns of the words beside the diagram. */
const WORD_COLS = 25;

/**
 * Acceleration along against across the car, the car pointing up: braking is down, a left turn left. The same scale both
 * ways; limits dotted, the target in dashes, the driver's own thick and in front. What is what and one reading stand
 * beside it.
 */
export function drawGg(grid: CellGrid, area: Area, subject: GgSubject, look: Look): void {
  const room = {
    cols: area.cols - GG_SCALE_COLS - 2 - WORD_COLS,
    rows: area.rows - GG_SCALE_ROWS,
  };
  const scale = scaleFor(subject, room);
  const plot = { x: area.x + GG_SCALE_COLS, y: area.y + GG_SCALE_ROWS, ...scale.size };
  drawGgAxes(grid, plot, scale, look);
  drawLines(grid, plot, scale, subject, look);
  const x = plot.x + scale.size.cols + 2;
  drawSideText(
    grid,
    { ...area, x, cols: area.x + area.cols - x },
    legend(subject, look),
    ggReading(subject, look.units),
    look,
  );
}

/** The side to which the zone turns; both for a zone that turns both ways. */
function scaleFor({ limits, target, own }: GgSubject, room: Size): GgScale {
  const traces = [...(target === null ? [] : [target]), ...own];
  const sides = sidesOf(traces);
  const most = BEYOND * limits.fast.accelYMps2.at(-1)!;
  const span = ggSpan([
    ...traces.map(({ accelXMps2, accelYMps2 }) => ({
      x: accelXMps2,
      y: accelYMps2.map((across) => Math.min(most, Math.max(-most, across))),
    })),
    ...sides.flatMap((side) =>
      [limits.fast, limits.slow].map(({ accelXMps2, accelYMps2 }) => ({
        x: accelXMps2,
        y: accelYMps2.map((across) => side * across),
      })),
    ),
  ]);
  return ggScale(span, room);
}

/** A car that comes much too fast asks for what no car has: the picture ends at this share of the limit. */
const BEYOND = 1.2;
/** Less than this across is going straight, m/s^2. */
const STRAIGHT_MPS2 = 2;

function sidesOf(traces: readonly GripTrace[]): readonly (1 | -1)[] {
  const turns = (side: 1 | -1): boolean =>
    traces.some(({ accelYMps2 }) => accelYMps2.some((across) => side * across > STRAIGHT_MPS2));
  const sides = ([1, -1] as const).filter(turns);
  return sides.length > 0 ? sides : [1];
}

function drawLines(
  grid: CellGrid,
  plot: Area,
  scale: GgScale,
  { limits, target, own }: GgSubject,
  look: Look,
): void {
  const { theme, unicode } = look;
  const paint = (places: readonly Dot[], stroke: Stroke, pen: Pen, plain: string): void =>
    paintRaster(grid, plot, lineDots(places, plot, stroke), pen, unicode ? null : plain);
  const sides = sidesOf([...(target === null ? [] : [target]), ...own]);
  for (const side of sides) {
    paint(limitDots(limits.slow, side, scale), SPARSE, theme.text, '.');
    paint(limitDots(limits.fast, side, scale), DOTTED, theme.text, ':');
  }
  for (const trace of own.slice(0, -1)) paint(dotsOf(trace, scale), THIN, theme.driver, '*');
  if (target !== null) paint(dotsOf(target, scale), DASHED, theme.target, '-');
  const last = own.at(-1);
  if (last !== undefined) paint(dotsOf(last, scale), THICK, theme.driver, '#');
  if (target !== null) drawTurnIn(grid, plot, scale, target, 't', theme.target);
  if (last !== undefined) drawTurnIn(grid, plot, scale, last, 'T', theme.driver);
}

function limitDots({ accelXMps2, accelYMps2 }: GripLimit, side: number, scale: GgScale): Dot[] {
  return Array.from(accelXMps2, (along, i) => scale.dotOf(along, side * accelYMps2[i]!));
}

function dotsOf({ accelXMps2, accelYMps2 }: GripTrace, scale: GgScale): Dot[] {
  return Array.from(accelXMps2, (along, i) => scale.dotOf(along, accelYMps2[i]!));
}

/** The letter of turn-in, just below its place. */
function drawTurnIn(
  grid: CellGrid,
  plot: Area,
  scale: GgScale,
  trace: GripTrace,
  letter: string,
  pen: Pen,
): void {
  const index = nearestIndex(trace, 0);
  if (index === null) return;
  const { x, y } = scale.dotOf(trace.accelXMps2[index]!, trace.accelYMps2[index]!);
  const column = Math.min(plot.cols - 1, Math.max(0, Math.floor(Math.round(x) / DOTS_ACROSS)));
  const row = Math.min(plot.rows - 1, Math.max(0, Math.floor(Math.round(y) / DOTS_DOWN)));
  putCell(grid, plot.x + column, plot.y + row, letter.charCodeAt(0), pen);
}

/** A zone may begin behind turn-in. */
function turnIn(trace: GripTrace, letter: string): string {
  return nearestIndex(trace, 0) === null ? '' : `, ${letter} at turn-in`;
}

function legend(
  { limits, target, own, speedText }: GgSubject,
  { theme, unicode }: Look,
): readonly SideLine[] {
  const sample = (braille: string, plain: string): string => (unicode ? braille : plain);
  const lines: SideLine[] = [];
  const last = own.at(-1);
  if (last !== undefined)
    lines.push([`${sample('━━', '##')} you${turnIn(last, 'T')}`, theme.driver]);
  if (own.length > 1) lines.push([`${sample('──', '**')} reps before`, theme.driver]);
  if (target !== null)
    lines.push([`${sample('╌╌', '--')} target${turnIn(target, 't')}`, theme.target]);
  lines.push([`${sample('··', '::')} limit, ${speedText(limits.fast.speedMps)}`, theme.text]);
  lines.push([`${sample('· ', '. ')} limit, ${speedText(limits.slow.speedMps)}`, theme.text]);
  return lines;
}
