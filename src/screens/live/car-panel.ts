import type { LiveView } from '../../live/live-view.ts';
import { fixed, percentText } from '../../number-text.ts';
import { speedText } from '../../unit-text.ts';
import type { Area, CellGrid, Pen } from '../cell-grid.ts';
import { levelBar } from '../level-bar.ts';
import type { Look } from '../look.ts';
import { writeText } from '../write-text.ts';
import { whereText } from './place-text.ts';

const NAME_COLS = 7;
const PERCENT_COLS = 7;
const SPEED_COLS = '300 km/h'.length;
/** Share of the rev limit from which the engine says so. */
const NEAR_LIMIT = 0.97;

/** What the car does, in numbers and words, at rest in its place beside the picture. */
export function drawCarPanel(grid: CellGrid, area: Area, live: LiveView, look: Look): void {
  const { theme, units = 'metric' } = look;
  const speed = (mps: number): string => speedText(mps, units).padStart(SPEED_COLS);
  let row = area.y;
  const write = (text: string, pen: Pen = theme.text): void => {
    writeText(grid, area.x, row++, text, pen);
  };
  write(whereText(live.placeM, units), theme.strong);
  row++;
  write(`speed  ${speed(live.speedMps)}`, theme.strong);
  if (live.targetSpeedMps !== null) write(`target ${speed(live.targetSpeedMps)}`, theme.target);
  row++;
  write(`gear   ${live.gear}`, theme.strong);
  write(`revs   ${fixed(live.rpm, 0)} of ${fixed(live.revLimitRpm, 0)}`);
  write(revWords(live), theme.strong);
  write('grip used', theme.quiet);
  drawUse(grid, { ...area, y: row++ }, 'front', live.frontUse, look);
  drawUse(grid, { ...area, y: row++ }, 'rear', live.rearUse, look);
  if (live.locked !== null) {
    const wheels = live.locked === 'both' ? 'both axles' : live.locked;
    write(` ${wheels} locked `, theme.alert);
  }
}

/** The place alone, for reps by feel. */
export function drawPlaceAlone(grid: CellGrid, area: Area, live: LiveView, look: Look): void {
  writeText(grid, area.x, area.y, whereText(live.placeM, look.units), look.theme.strong);
}

/** What a shift light says, in words. */
function revWords({ rpm, revLimitRpm }: LiveView): string {
  if (rpm > revLimitRpm) return 'over the rev limit';
  return rpm >= NEAR_LIMIT * revLimitRpm ? 'at the rev limit' : '';
}

function drawUse(
  grid: CellGrid,
  { x, y, cols }: Area,
  name: string,
  use: number | null,
  { theme }: Look,
): void {
  writeText(grid, x, y, name, theme.text);
  if (use === null) {
    writeText(grid, x + NAME_COLS, y, 'not shown', theme.quiet);
    return;
  }
  const width = Math.min(30, cols - NAME_COLS - PERCENT_COLS);
  const after = writeText(grid, x + NAME_COLS, y, levelBar(use, width), theme.driver);
  const pen = use > 1 ? theme.strong : theme.text;
  writeText(grid, after, y, percentText(use).padStart(PERCENT_COLS - 1), pen);
}
