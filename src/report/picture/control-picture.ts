import { scaleLinear, scaleLog } from 'd3-scale';
import { chartReading } from '../../consistency/weeks/chart-reading.ts';
import type { ChartPoint, PracticeChart } from '../../consistency/weeks/practice-chart.ts';
import { tenths } from '../../number-text.ts';
import { element, type Markup } from '../markup/markup.ts';
import { levelAxis, uprightAxis } from './axes.ts';
import { linePath, type Scales } from './curves.ts';
import { type LegendEntry, legend } from './legend.ts';
import { diamond, dot, ring } from './marks.ts';
import type { DataTable, Picture } from './picture.ts';
import { type PlotBox, plotBox } from './plot.ts';

interface ControlSubject {
  readonly id: string;
  readonly title: string;
  readonly chart: PracticeChart;
  /** The practice that the page is about; null for none. */
  readonly practiceId: number | null;
}

const PLOT_HEIGHT = 160;
/** More stand too close to be told apart. */
const MOST_PRACTICES = 60;
const MOST_TICKS = 4;

/** Practices against their limits; null of fewer than two. */
export function controlPicture(subject: ControlSubject): Picture | null {
  const { id, title, chart } = subject;
  const points = chart.points.slice(-MOST_PRACTICES);
  if (points.length < 2) return null;
  const key = legend(entries(points, subject));
  const box = plotBox(key.height, PLOT_HEIGHT);
  const scales = scalesOf(points, chart, box);
  const every = Math.ceil(points.length / MOST_TICKS);
  return {
    id,
    title,
    reading: chartReading(chart),
    height: box.bottom + 38,
    marks: [
      ...key.marks,
      ...uprightAxis(
        {
          scale: scales.y,
          name: 'median release error, % of full scale; lower is better',
          text: (level) => String(Math.round(1000 * level) / 10),
          ticks: roundLevels(scales.y),
        },
        box,
      ),
      ...levelAxis(
        {
          scale: scales.x,
          name: 'day of the practice',
          text: (i) => points[i]?.day ?? '',
          ticks: points.flatMap((_, i) => (i % every === Math.floor(every / 2) ? [i] : [])),
        },
        box,
      ),
      ...limitLines(chart, scales, box),
      linePath(
        points.map((_, i) => i),
        points.map(({ level }) => level),
        scales,
        'trend',
      ),
      ...points.flatMap((point, i) => pointMarks(point, i, subject, scales)),
    ],
    table: tableOf(chart),
  };
}

/** Upwards equal distances are equal factors, as the limits are. */
function scalesOf(points: readonly ChartPoint[], { limits }: PracticeChart, box: PlotBox): Scales {
  const levels = points.map(({ level }) => level);
  if (limits !== null) levels.push(limits.upperLevel, limits.lowerLevel);
  return {
    x: scaleLinear()
      .domain([-0.5, points.length - 0.5])
      .range([box.left, box.right]),
    y: scaleLog()
      .domain([Math.min(...levels) / 1.1, Math.max(...levels) * 1.1])
      .range([box.bottom, box.top]),
  };
}

/** Round levels that do not crowd: on this scale those of its own are too few or too many. */
function roundLevels(scale: Scales['y']): number[] {
  const levels = scaleLinear()
    .domain(scale.domain())
    .ticks(6)
    .filter((level) => level > 0);
  const kept: number[] = [];
  for (const level of levels) {
    const last = kept.at(-1);
    if (last === undefined || scale(last) - scale(level) > 14) kept.push(level);
  }
  return kept;
}

function limitLines({ limits }: PracticeChart, { y }: Scales, box: PlotBox): Markup[] {
  if (limits === null) return [];
  const lines = [
    { level: limits.upperLevel, look: 'limit' },
    { level: limits.centreLevel, look: 'centre' },
    { level: limits.lowerLevel, look: 'limit' },
  ];
  return lines.map(({ level, look }) =>
    element('path', {
      class: `line ${look}`,
      d: `M${box.left},${y(level).toFixed(1)}H${box.right}`,
    }),
  );
}

function pointMarks(
  { level, signal, isBaseline, practiceId }: ChartPoint,
  i: number,
  subject: ControlSubject,
  { x, y }: Scales,
): Markup[] {
  const [cx, cy] = [x(i), y(level)];
  const ordinary = dot(cx, cy, isBaseline && subject.chart.limits !== null ? 'dot hollow' : 'dot');
  return [
    signal === null ? ordinary : diamond(cx, cy, 'odd'),
    ...(practiceId === subject.practiceId ? [ring(cx, cy)] : []),
  ];
}

function entries(
  points: readonly ChartPoint[],
  { chart, practiceId }: ControlSubject,
): LegendEntry[] {
  const mark = (name: string, sample: (x: number, y: number) => Markup): LegendEntry => ({
    name,
    sample,
    look: '',
  });
  const isHere = points.some((point) => point.practiceId === practiceId);
  const isOdd = points.some(({ signal }) => signal !== null);
  const limits = chart.limits === null ? [] : LIMIT_ENTRIES;
  return [
    mark('practice', (x, y) => dot(x, y, 'dot')),
    ...(chart.limits === null ? [] : [mark('first ten', (x, y) => dot(x, y, 'dot hollow'))]),
    ...(isOdd ? [mark('out of the ordinary', (x, y) => diamond(x, y, 'odd'))] : []),
    ...(isHere ? [mark('this practice', ring)] : []),
    ...limits,
  ];
}

const LIMIT_ENTRIES: readonly LegendEntry[] = [
  { name: 'limits', sample: 'line', look: 'limit' },
  { name: 'centre', sample: 'line', look: 'centre' },
];

function tableOf({ points, limits }: PracticeChart): DataTable {
  const limitRows =
    limits === null
      ? []
      : [
          ['upper limit', '', tenths(limits.upperLevel), ''],
          ['centre', '', tenths(limits.centreLevel), ''],
          ['lower limit', '', tenths(limits.lowerLevel), ''],
        ];
  return {
    heads: ['day', 'hidden reps', 'median release error %', 'reads'],
    rows: [
      ...limitRows,
      ...points.map(({ day, reps, level, signal, isBaseline }) => [
        day,
        String(reps),
        tenths(level),
        signal ?? (isBaseline ? 'makes the limits' : 'ordinary'),
      ]),
    ],
  };
}
