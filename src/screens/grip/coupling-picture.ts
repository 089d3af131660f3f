import { couplingReading, type SteeringCoupling } from '../../drill/diagnosis/steering-coupling.ts';
import { type Area, type CellGrid, type Pen, putCell } from '../cell-grid.ts';
import { paintRaster } from '../dot-raster.ts';
import type { Look } from '../look.ts';
import { drawLevelScale } from '../plot-axes.ts';
import { columnOf, type PlotScale, scaleBetween } from '../plot-scale.ts';
import { textWidth, writeText } from '../write-text.ts';
import { DASHED, lineDots, type Stroke, THICK, THIN } from './line-dots.ts';
import { drawSideText, type SideLine } from './side-text.ts';

/** What a picture of steering against brake shows. */
export interface CouplingSubject {
  /** Null for a target that leaves steering to the driver, and where it is not to be seen. */
  readonly target: SteeringCoupling | null;
  /** Thin, but for the last, which is thick: the newest rep. */
  readonly own: readonly SteeringCoupling[];
}

const SCALE_COLS = 7;
/** Base line and degrees. */
const BELOW = 2;
const WORD_COLS = 25;
/** What the picture shows at least, degrees at the wheel. */
const LEAST_DEG = 20;

/**
 * Brake against wheel from the peak to brake off: down the left edge is straight, along the base off the brake, and what
 * lies between is trail braking. The side to which most turn goes to the right.
 */
export function drawCoupling(
  grid: CellGrid,
  area: Area,
  subject: CouplingSubject,
  look: Look,
): void {
  const { target, own } = subject;
  const all = target === null ? own : [...own, target];
  if (all.length === 0) return;
  const side = sideOf(all);
  const plot: Area = {
    x: area.x + SCALE_COLS,
    y: area.y,
    cols: area.cols - SCALE_COLS - 2 - WORD_COLS,
    rows: area.rows - BELOW,
  };
  const ends = endsOf(all, side);
  const scale = scaleBetween(ends, plot);
  drawLevelScale(grid, plot, ends.top, scale, look);
  drawAngles(grid, plot, scale, ends, side, look);
  drawLines(grid, plot, scale, subject, side, look);
  const x = plot.x + plot.cols + 2;
  const words = { ...area, x, cols: area.x + area.cols - x };
  drawSideText(grid, words, legend(subject, side, look), readingOf(subject, look), look);
}

/** 1 where most turn left, else -1. */
function sideOf(all: readonly SteeringCoupling[]): 1 | -1 {
  const ends = all.map(({ steeringDeg }) => Math.sign(steeringDeg.at(-1) ?? 0));
  return ends.reduce((sum, sign) => sum + sign, 0) < 0 ? -1 : 1;
}

interface Ends {
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  readonly top: number;
}

function endsOf(all: readonly SteeringCoupling[], side: number): Ends {
  let [from, to, top] = [0, LEAST_DEG, 0];
  for (const { level, steeringDeg } of all) {
    for (const angle of steeringDeg) {
      from = Math.min(from, side * angle);
      to = Math.max(to, side * angle);
    }
    for (const one of level) top = Math.max(top, one);
  }
  return { from, to: 1.04 * to, bottom: 0, top: 1.05 * Math.max(0.01, top) };
}

const STEPS_DEG = [5, 10, 20, 30, 45, 90] as const;
const LABEL_COLS = 6;

function drawAngles(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  { from, to }: Ends,
  side: number,
  { theme }: Look,
): void {
  const base = area.y + area.rows;
  writeText(grid, area.x - 1, base, `└${'─'.repeat(area.cols)}`, theme.quiet);
  const step = STEPS_DEG.find((each) => (each / (to - from)) * area.cols >= LABEL_COLS) ?? 180;
  let free = area.x - 2;
  for (let at = Math.ceil(from / step) * step; at <= to; at += step) {
    const column = columnOf(scale, area, at);
    if (column >= area.x + area.cols) break;
    putCell(grid, column, base, '┬'.codePointAt(0)!, theme.quiet);
    const label = angleLabel(at, side);
    const start = Math.min(
      Math.max(area.x, column - (label.length >> 1)),
      area.x + area.cols - textWidth(label),
    );
    if (start > free) free = writeText(grid, start, base + 1, label, theme.quiet);
  }
}

function angleLabel(angle: number, side: number): string {
  if (angle === 0) return '0';
  return `${Math.abs(angle)} ${angle * side > 0 ? 'L' : 'R'}`;
}

function drawLines(
  grid: CellGrid,
  plot: Area,
  scale: PlotScale,
  { target, own }: CouplingSubject,
  side: number,
  { theme, unicode }: Look,
): void {
  const paint = (
    { level, steeringDeg }: SteeringCoupling,
    stroke: Stroke,
    pen: Pen,
    plain: string,
  ): void => {
    const dots = Array.from(level, (one, i) => ({
      x: scale.dotX(side * steeringDeg[i]!),
      y: scale.dotY(one),
    }));
    paintRaster(grid, plot, lineDots(dots, plot, stroke), pen, unicode ? null : plain);
  };
  for (const rep of own.slice(0, -1)) paint(rep, THIN, theme.driver, '*');
  if (target !== null) paint(target, DASHED, theme.target, '-');
  const last = own.at(-1);
  if (last !== undefined) paint(last, THICK, theme.driver, '#');
}

function legend(
  { target, own }: CouplingSubject,
  side: number,
  { theme, unicode }: Look,
): readonly SideLine[] {
  const sample = (line: string, plain: string): string => (unicode ? line : plain);
  const lines: SideLine[] = [
    ['up: brake, %', theme.quiet],
    [`right: wheel, deg ${side > 0 ? 'left' : 'right'}`, theme.quiet],
  ];
  if (own.length > 0) lines.push([`${sample('━━', '##')} you`, theme.driver]);
  if (own.length > 1) lines.push([`${sample('──', '**')} reps before`, theme.driver]);
  if (target !== null) lines.push([`${sample('╌╌', '--')} target`, theme.target]);
  return lines;
}

/** A target alone is read as if it had been driven. */
function readingOf({ target, own }: CouplingSubject, { unicode }: Look): string {
  const [reps, beside] = own.length > 0 ? [own, target] : [target === null ? [] : [target], null];
  const said = couplingReading(reps, beside).replace(own.length > 0 ? '' : ' of one rep', '');
  const words = `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
  return unicode ? words : words.replaceAll('°', ' deg');
}
