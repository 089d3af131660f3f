import { scaleLinear } from 'd3-scale';
import { type PracticeSpread, spreadReading } from '../../drill/diagnosis/spread-curve.ts';
import { tenths } from '../../number-text.ts';
import { uprightAxis } from './axes.ts';
import { type Along, alongHead, blockAxis, blockFoot, phaseShades } from './block-axis.ts';
import { areaPath, linePath, shownPlaces } from './curves.ts';
import type { DataTable, Picture } from './picture.ts';
import { plotBox } from './plot.ts';

interface SpreadSubject {
  readonly id: string;
  readonly title: string;
  readonly curve: PracticeSpread;
  readonly along: Along;
}

const PLOT_HEIGHT = 110;
const TABLE_ROWS = 40;

/** How far reps differ from each other along the target. */
export function spreadPicture({ id, title, curve, along }: SpreadSubject): Picture {
  const { spread, grid } = curve;
  const box = plotBox(0, PLOT_HEIGHT);
  const x = blockAxis(along, box);
  const most = spread.reduce((a, b) => Math.max(a, b), 0.001);
  const y = scaleLinear().domain([0, most]).nice(4).range([box.bottom, box.top]);
  const upright = {
    scale: y,
    name: 'spread between reps, % of full scale',
    text: (level: number) => String(Math.round(1000 * level) / 10),
    ticks: y.ticks(4),
  };
  const scales = { x: x.scale, y };
  const foot = blockFoot(x, along, grid, box);
  return {
    id,
    title,
    reading: spreadReading(curve),
    height: box.bottom + foot.height,
    marks: [
      ...phaseShades(x, along, grid, box),
      ...uprightAxis(upright, box),
      ...foot.marks,
      areaPath(
        along.at,
        spread.map(() => 0),
        spread,
        scales,
        'shade',
      ),
      linePath(along.at, spread, scales, 'own'),
    ],
    table: tableOf(spread, along),
  };
}

function tableOf(spread: Float64Array, along: Along): DataTable {
  const { unit, at } = along;
  return {
    heads: [alongHead(along), 'spread %'],
    rows: shownPlaces(at.length, TABLE_ROWS).map((i) => [
      at[i]!.toFixed(unit === 's' ? 2 : 1),
      tenths(spread[i]!),
    ]),
  };
}
