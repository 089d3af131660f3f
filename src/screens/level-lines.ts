import type { DrillView } from '../drill/drill-view.ts';
import { fixed, percentText } from '../number-text.ts';
import type { CellGrid, Pen } from './cell-grid.ts';
import { levelBar, steeringBar } from './level-bar.ts';
import type { Look } from './look.ts';
import { isBlind, isStill } from './visible-rep.ts';
import { writeText } from './write-text.ts';

/** Steering angle at the end of its bar, degrees at the wheel. */
const STEERING_END_DEG = 180;
const NAME_COLS = 9;
const PERCENT_COLS = 6;
const ANGLE_COLS = 12;

/** Two rows: pedals as bars, then steering, gear and the error so far. At rest during the count and by feel. */
export function drawLevelLines(grid: CellGrid, row: number, view: DrillView, look: Look): void {
  if (isStill(view) || isBlind(view)) {
    const end = isStill(view) ? 'the count' : 'the rep';
    const text = `brake, throttle, clutch, steering: not shown until ${end} is over`;
    writeText(grid, 1, row, text, look.theme.quiet);
    return;
  }
  const third = Math.floor((grid.cols - 2) / 3);
  drawPedal(grid, 1, row, third, 'brake', view.brakeLevel, look.theme.driver, look);
  drawPedal(grid, 1 + third, row, third, 'throttle', view.throttleLevel, look.theme.text, look);
  drawPedal(grid, 1 + 2 * third, row, third, 'clutch', view.clutchLevel, look.theme.text, look);
  drawSteering(grid, 1, row + 1, third, view.steeringDeg, look);
  const gear = view.gear === null ? 'gear not known' : `gear ${view.gear}`;
  const after = writeText(grid, 1 + third + ANGLE_COLS, row + 1, gear, look.theme.text);
  if (view.liveErrorLevel === null || view.phase !== 'braking') return;
  const error = `error so far ${percentText(view.liveErrorLevel, 1)} rms`;
  writeText(grid, Math.max(1 + 2 * third, after + 2), row + 1, error, look.theme.text);
}

function drawPedal(
  grid: CellGrid,
  x: number,
  row: number,
  width: number,
  name: string,
  level: number | null,
  pen: Pen,
  { theme }: Look,
): void {
  writeText(grid, x, row, name, theme.text);
  const barX = x + NAME_COLS;
  if (level === null) {
    writeText(grid, barX, row, 'not moved', theme.quiet);
    return;
  }
  const bar = levelBar(level, width - NAME_COLS - PERCENT_COLS - 2);
  const after = writeText(grid, barX, row, bar, pen);
  writeText(grid, after, row, percentText(level).padStart(PERCENT_COLS), theme.text);
}

function drawSteering(
  grid: CellGrid,
  x: number,
  row: number,
  width: number,
  angle: number | null,
  { theme, unicode }: Look,
): void {
  writeText(grid, x, row, 'steering', theme.text);
  const barX = x + NAME_COLS;
  if (angle === null) {
    writeText(grid, barX, row, 'not moved', theme.quiet);
    return;
  }
  const cells = (width - NAME_COLS - 2) | 1;
  const bar = steeringBar(angle / STEERING_END_DEG, cells);
  const after = writeText(grid, barX, row, bar, theme.driver);
  writeText(grid, after + 1, row, angleText(angle, unicode), theme.text);
}

function angleText(angle: number, unicode: boolean): string {
  const side = Math.round(angle) === 0 ? '' : angle > 0 ? ' left' : ' right';
  return `${fixed(Math.abs(angle), 0)}${unicode ? '°' : ' deg'}${side}`;
}
