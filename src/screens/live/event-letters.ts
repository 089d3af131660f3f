import type { LiveEvent } from '../../live/live-event.ts';
import type { PlaceTrack } from '../../live/live-view.ts';
import { type Area, type CellGrid, putCell } from '../cell-grid.ts';
import type { Look } from '../look.ts';
import { columnOf, type PlotScale, rowOf } from '../plot-scale.ts';
import { eventEndM, eventLetter, eventPlaceM } from './event-words.ts';
import { valueAt } from './place-curve.ts';

/** The letter of each event on the row above the own trace, for as long as it lasted. */
export function drawEventLetters(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  events: readonly LiveEvent[],
  own: PlaceTrack,
  { theme }: Look,
): void {
  const endM = own.placeM.at(-1) ?? 0;
  for (const event of events) {
    const fromM = eventPlaceM(event);
    const last = Math.min(columnOf(scale, area, eventEndM(event) ?? endM), area.x + area.cols - 1);
    for (let x = Math.max(area.x, columnOf(scale, area, fromM)); x <= last; x++) {
      const placeM = Math.max(fromM, scale.at(2 * (x - area.x)));
      const row = rowOf(scale, area, valueAt(own, placeM)) - 1;
      const y = Math.min(area.y + area.rows - 1, Math.max(area.y, row));
      putCell(grid, x, y, eventLetter(event).charCodeAt(0), theme.strong);
    }
  }
}
