import type { DrivenPlace } from '../../target/derive/driven-curve.ts';
import { OVER_GRIP } from '../../target/derive/grip-spans.ts';
import type { TargetDomain } from '../../target/target.ts';
import { type Area, type CellGrid, putCell } from '../cell-grid.ts';
import type { Look } from '../look.ts';
import type { PlotScale } from '../plot-scale.ts';
import { writeText } from '../write-text.ts';
import { alongOf } from './along-axis.ts';
import type { EditedCar } from './edit-view.ts';

/** From here on the grip counts as used. */
const NEARLY_ALL = 0.92;
const LEFT = '░';
const USED = '━';
const OVER = '█';

/** For each axle a row: where grip is left, used or exceeded while the foot brakes. */
export function drawGripStrips(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  { driven }: EditedCar,
  domain: TargetDomain,
  look: Look,
): void {
  const { theme } = look;
  const words = `grip by axle  ${LEFT} left  ${USED} used  ${OVER} exceeded`;
  writeText(grid, 1, area.y - 1, words, theme.quiet);
  const rows = [
    { name: 'front', use: ({ frontUse }: DrivenPlace) => frontUse },
    { name: 'rear', use: ({ rearUse }: DrivenPlace) => rearUse },
  ];
  const columns = placesByColumn(driven.places, area, scale, domain);
  rows.forEach(({ name, use }, i) => {
    writeText(grid, 1, area.y + i, name, theme.quiet);
    columns.forEach((places, column) => {
      if (places.length === 0) return;
      const most = Math.max(...places.map(use));
      const sign = most > OVER_GRIP ? OVER : most >= NEARLY_ALL ? USED : LEFT;
      const pen = sign === OVER ? theme.driver : theme.text;
      putCell(grid, area.x + column, area.y + i, sign.codePointAt(0)!, pen);
    });
  });
}

/** The moments of braking that fall in each column; the fastest stretches have fewer moments than columns have dots. */
function placesByColumn(
  places: readonly DrivenPlace[],
  area: Area,
  scale: PlotScale,
  domain: TargetDomain,
): readonly (readonly DrivenPlace[])[] {
  const columns = Array.from({ length: area.cols }, (): DrivenPlace[] => []);
  for (const place of places)
    if (place.level > 0)
      columns[Math.floor(scale.dotX(alongOf(domain, place.at)) / 2)]?.push(place);
  return columns;
}
