import { scaleLinear } from 'd3-scale';
import { CONDITION_WORDS } from '../../consistency/condition-words.ts';
import type { Estimate } from '../../consistency/estimate.ts';
import type { WeekErrors, WeekRow } from '../../consistency/weeks/week-rows.ts';
import { tenths } from '../../number-text.ts';
import { element, type Markup } from '../markup/markup.ts';
import { levelAxis, uprightAxis } from './axes.ts';
import { linePath, type Scales } from './curves.ts';
import { type LegendEntry, legend } from './legend.ts';
import { cross, dot } from './marks.ts';
import type { DataTable, Picture } from './picture.ts';
import { type PlacedWeek, placedWeeks, weekRuns } from './placed-weeks.ts';
import { type PlotBox, plotBox } from './plot.ts';

interface WeekSubject {
  readonly id: string;
  readonly title: string;
  readonly reading: string;
  readonly weeks: readonly WeekRow[];
}

const PLOT_HEIGHT = 180;
const MOST_TICKS = 5;
const BREAK_ROWS = 3;

/** The release error week by week, with gaps where nothing was driven and a line wherever reps stop to compare; null before any week has a median. */
export function weekPicture({ id, title, reading, weeks }: WeekSubject): Picture | null {
  const most = highest(weeks);
  if (most === 0) return null;
  const placed = placedWeeks(weeks);
  const key = legend(entries(placed));
  const box = plotBox(key.height, PLOT_HEIGHT);
  const count = (placed.at(-1)?.week ?? 0) + 1;
  const x = scaleLinear()
    .domain([-0.5, count - 0.5])
    .range([box.left, box.right]);
  const y = scaleLinear().domain([0, most]).nice(5).range([box.bottom, box.top]);
  const names = new Map(placed.map(({ week, row }) => [week, row.week]));
  const every = Math.ceil(count / MOST_TICKS);
  const level = {
    scale: x,
    name: 'ISO week',
    text: (week: number) => names.get(week) ?? '',
    ticks: [...names.keys()].filter((week) => week % every === Math.floor(every / 2)),
  };
  const upright = {
    scale: y,
    name: 'median release error, % of full scale; lower is better',
    text: (value: number) => String(Math.round(1000 * value) / 10),
    ticks: y.ticks(5),
  };
  return {
    id,
    title,
    reading,
    height: box.bottom + 38,
    marks: [
      ...key.marks,
      ...gaps(placed, x, box),
      ...uprightAxis(upright, box),
      ...levelAxis(level, box),
      ...breaks(placed, x, box),
      ...weekRuns(placed).map((run) => runLine(run, { x, y })),
      ...placed.flatMap((week) => weekMarks(week, { x, y })),
    ],
    table: tableOf(weeks),
  };
}

function gaps(placed: readonly PlacedWeek[], x: Scales['x'], { top, bottom }: PlotBox): Markup[] {
  return placed
    .filter(({ row }) => row.reps === 0)
    .map(({ at }) => {
      const from = x(at - 0.5);
      const width = x(at + 0.5) - from;
      return element('rect', { class: 'band', x: from, y: top, width, height: bottom - top });
    });
}

function breaks(
  placed: readonly PlacedWeek[],
  x: Scales['x'],
  { top, bottom, left, right }: PlotBox,
): Markup[] {
  const changed = placed.filter(({ row }) => row.changed.length > 0);
  return changed.flatMap(({ from, row }, i) => {
    const at = x(from);
    const isLeft = at > (left + right) / 2;
    return [
      element('path', { class: 'line break', d: `M${at.toFixed(1)},${top}V${bottom}` }),
      element(
        'text',
        {
          class: isLeft ? 'end' : null,
          x: at + (isLeft ? -4 : 4),
          y: top + 11 + 14 * (i % BREAK_ROWS),
        },
        `new ${row.changed.map((name) => CONDITION_WORDS[name]).join(', ')}`,
      ),
    ];
  });
}

function runLine(run: readonly PlacedWeek[], scales: Scales): Markup {
  const medians = run.map(({ row }) => row.hidden.medianReleaseErrorLevel.value!);
  return linePath(
    run.map(({ at }) => at),
    medians,
    scales,
    'trend',
  );
}

function weekMarks({ at, row }: PlacedWeek, { x, y }: Scales): Markup[] {
  const { interval } = row.hidden;
  const hidden = row.hidden.medianReleaseErrorLevel.value;
  const first = row.firstOfDay.medianReleaseErrorLevel.value;
  const bar = (low: number, high: number): Markup =>
    element('path', {
      class: 'line trend',
      d: `M${x(at).toFixed(1)},${y(low).toFixed(1)}V${y(high).toFixed(1)}`,
    });
  return [
    ...(interval === null ? [] : [bar(interval.low, interval.high)]),
    ...(hidden === null ? [] : [dot(x(at), y(hidden), 'dot')]),
    ...(first === null ? [] : [cross(x(at), y(first), 'line first')]),
  ];
}

function entries(placed: readonly PlacedWeek[]): LegendEntry[] {
  const has = (is: (row: WeekRow) => boolean): boolean => placed.some(({ row }) => is(row));
  return [
    { name: 'hidden reps, interval', sample: (x, y) => dot(x, y, 'dot'), look: '' },
    ...(has((row) => row.firstOfDay.medianReleaseErrorLevel.value !== null)
      ? [
          {
            name: 'first-of-day reps',
            sample: (x: number, y: number) => cross(x, y, 'line first'),
            look: '',
          },
        ]
      : []),
    ...(has(({ reps }) => reps === 0)
      ? [{ name: 'no practice', sample: 'fill', look: 'band' } as const]
      : []),
    ...(has(({ changed }) => changed.length > 0)
      ? [{ name: 'does not compare across', sample: 'line', look: 'break' } as const]
      : []),
  ];
}

function highest(weeks: readonly WeekRow[]): number {
  const ends = weeks.flatMap(({ hidden, firstOfDay }) => [
    hidden.interval?.high ?? 0,
    hidden.medianReleaseErrorLevel.value ?? 0,
    firstOfDay.medianReleaseErrorLevel.value ?? 0,
  ]);
  return ends.reduce((most, end) => Math.max(most, end), 0);
}

function tableOf(weeks: readonly WeekRow[]): DataTable {
  return {
    heads: ['week', 'reps', 'hidden %', 'interval', 'first-of-day %', 'spread %', 'new'],
    rows: weeks.map(({ week, reps, hidden, firstOfDay, spreadLevel, changed }) => [
      week,
      String(reps),
      errorText(hidden),
      intervalText(hidden),
      errorText(firstOfDay),
      known(spreadLevel),
      changed.map((name) => CONDITION_WORDS[name]).join(', '),
    ]),
  };
}

function errorText({ medianReleaseErrorLevel }: WeekErrors): string {
  const { reps } = medianReleaseErrorLevel;
  return reps === 0 ? '-' : `${known(medianReleaseErrorLevel)} (${reps})`;
}

function intervalText({ interval }: WeekErrors): string {
  if (interval === null) return '-';
  const { low, high, level } = interval;
  return `${tenths(low)} to ${tenths(high)} at ${Math.round(100 * level)} %`;
}

function known({ value }: Estimate): string {
  return value === null ? 'too few' : tenths(value);
}
