import type { RestPicture } from '../../drill/display/display-settings.ts';
import type { DrillView } from '../../drill/drill-view.ts';
import { speedText } from '../../unit-text.ts';
import type { Area, CellGrid } from '../cell-grid.ts';
import { drawPlan } from '../live/plan-picture.ts';
import type { Look } from '../look.ts';
import { fitText, writeText } from '../write-text.ts';
import { drawCoupling } from './coupling-picture.ts';
import { drawGg } from './gg-picture.ts';

/** What a picture of the rest is called. */
const HEADINGS: Readonly<Record<Exclude<RestPicture, 'usual' | 'curve'>, string>> = {
  gg: 'g-g diagram, the car pointing up',
  coupling: 'steering against brake',
  above: 'the corner from above, to scale',
};

/**
 * The picture that the driver has chosen for the rest and for the end of a block, with its name in the row above.
 * @returns false where the usual picture has its place
 */
export function drawRestPicture(grid: CellGrid, area: Area, view: DrillView, look: Look): boolean {
  const { pictures, display } = view;
  const { units = 'metric' } = look;
  if (pictures === null) return false;
  if (display.picture === 'gg' && pictures.gg !== null)
    drawGg(grid, area, { ...pictures.gg, speedText: (mps) => speedText(mps, units) }, look);
  else if (display.picture === 'coupling' && pictures.coupling !== null)
    drawCoupling(grid, area, pictures.coupling, look);
  else if (display.picture === 'above' && pictures.above !== null)
    drawPlan(grid, area, pictures.above, look);
  else return false;
  drawPictureName(grid, area, HEADINGS[display.picture], look);
  return true;
}

/** Above an area what its picture is. */
export function drawPictureName(grid: CellGrid, area: Area, name: string, { theme }: Look): void {
  writeText(grid, area.x, area.y - 1, fitText(name, area.cols), theme.quiet);
}
