import { scaleLinear } from 'd3-scale';
import type { Overlay } from '../../drill/diagnosis/block-diagnosis.ts';
import { tenths } from '../../number-text.ts';
import type { Markup } from '../markup/markup.ts';
import { uprightAxis } from './axes.ts';
import { type Along, alongHead, blockAxis, blockFoot, phaseShades } from './block-axis.ts';
import { areaPath, linePath, type Scales, shownPlaces } from './curves.ts';
import { type LegendEntry, legend } from './legend.ts';
import type { DataTable, Picture } from './picture.ts';
import { plotBox } from './plot.ts';

/** A block's reps as a picture needs them. */
interface OverlaySubject {
  readonly id: string;
  readonly title: string;
  readonly reading: string;
  readonly overlay: Overlay;
  readonly along: Along;
  /** Numbers of the reps of the overlay, in its order. */
  readonly numbers: readonly number[];
}

const PLOT_HEIGHT = 210;
/** Rows of numbers: enough to draw the curves again by hand. */
const TABLE_ROWS = 40;

/** Reps over each other in thin lines, their mean in bold with the spread as a shade, the target in dashes. */
export function overlayPicture(subject: OverlaySubject): Picture {
  const { id, title, reading, overlay, along } = subject;
  const key = legend(entries(overlay));
  const box = plotBox(key.height, PLOT_HEIGHT);
  const x = blockAxis(along, box);
  const y = scaleLinear()
    .domain([0, topLevel(overlay)])
    .range([box.bottom, box.top]);
  const upright = {
    scale: y,
    name: 'brake, % of full scale',
    text: (level: number) => String(Math.round(100 * level)),
    ticks: y.ticks(5),
  };
  const scales = { x: x.scale, y };
  const foot = blockFoot(x, along, overlay.grid, box);
  return {
    id,
    title,
    reading,
    height: box.bottom + foot.height,
    marks: [
      ...key.marks,
      ...phaseShades(x, along, overlay.grid, box),
      ...uprightAxis(upright, box),
      ...foot.marks,
      ...curves(subject, scales),
    ],
    table: tableOf(subject),
  };
}

function curves({ overlay, along, numbers }: OverlaySubject, scales: Scales): Markup[] {
  const { grid, reps, mean, spread } = overlay;
  const around = (centre: Float64Array, width: Float64Array, side: number): Float64Array =>
    centre.map((level, i) => Math.max(0, level + side * width[i]!));
  const edge = (side: number): Markup =>
    linePath(along.at, around(grid.target, grid.corridor, side), scales, 'corridor');
  return [
    ...(mean === null || spread === null
      ? []
      : [areaPath(along.at, around(mean, spread, -1), around(mean, spread, 1), scales, 'shade')]),
    ...reps.map((rep, i) => linePath(along.at, rep, scales, `rep r${numbers[i]}`)),
    edge(-1),
    edge(1),
    linePath(along.at, grid.target, scales, 'target'),
    ...(mean === null ? [] : [linePath(along.at, mean, scales, 'mean')]),
    // a picked rep comes to lie on top
    ...reps.map((rep, i) => linePath(along.at, rep, scales, `picked r${numbers[i]}`)),
  ];
}

function entries({ reps, mean, spread }: Overlay): LegendEntry[] {
  return [
    { name: 'target', sample: 'line', look: 'target' },
    { name: 'corridor', sample: 'line', look: 'corridor' },
    ...(reps.length === 0 ? [] : [{ name: 'reps', sample: 'line', look: 'rep' } as const]),
    ...(mean === null ? [] : [{ name: 'mean', sample: 'line', look: 'mean' } as const]),
    ...(spread === null ? [] : [{ name: 'spread', sample: 'fill', look: 'shade' } as const]),
  ];
}

function topLevel({ grid, reps }: Overlay): number {
  const highest = [grid.target, ...reps].flatMap((curve) =>
    curve.reduce((a, b) => Math.max(a, b), 0),
  );
  return 1.05 * Math.max(...highest, 0.01);
}

function tableOf({ overlay, along, numbers }: OverlaySubject): DataTable {
  const { grid, reps, mean, spread } = overlay;
  const known = (curve: Float64Array | null, i: number): string =>
    curve === null ? '-' : tenths(curve[i]!);
  return {
    heads: [
      alongHead(along),
      'target %',
      'corridor ± %',
      'mean %',
      'spread %',
      ...numbers.map((number) => `rep ${number} %`),
    ],
    rows: shownPlaces(along.at.length, TABLE_ROWS).map((i) => [
      along.at[i]!.toFixed(along.unit === 's' ? 2 : 1),
      tenths(grid.target[i]!),
      tenths(grid.corridor[i]!),
      known(mean, i),
      known(spread, i),
      ...reps.map((rep) => tenths(rep[i]!)),
    ]),
  };
}
