import type { ChartPoint, PracticeChart } from '../../consistency/weeks/practice-chart.ts';
import { fixed } from '../../number-text.ts';

const ROWS = 11;
/** Two columns each. */
const MOST_PRACTICES = 30;

/** Practices from left to right against their limits, at most 80 columns; empty of fewer than two practices. */
export function controlChart(chart: PracticeChart): string[] {
  const points = chart.points.slice(-MOST_PRACTICES);
  if (points.length < 2) return [];
  const rowOf = rowScale(points, chart);
  const { limits } = chart;
  const ends = new Map(extremes(points).map((level) => [rowOf(level), level]));
  const lines = Array.from({ length: ROWS }, (_, row) => {
    const name = limits === null ? null : lineAt(row, rowOf, limits);
    const cells = points.map((point) => cell(point, row === rowOf(point.level), name));
    const level = name?.level ?? ends.get(row);
    const label = level === undefined ? '' : fixed(100 * level, 1);
    return `${label.padStart(6)} ${cells.join('')} ${name?.word ?? ''}`.trimEnd();
  });
  const [first, last] = [points[0]!.day, points.at(-1)!.day];
  return [
    'Median release error of hidden reps by practice, % of full scale: o within, #',
    'out of the ordinary; the limits come from the first ten practices and stay.',
    ...lines,
    `       ${first}${last.padStart(Math.max(11, 2 * points.length - 10))}`,
  ];
}

/** A scale where there are no limits yet. */
function extremes(points: readonly ChartPoint[]): readonly number[] {
  const levels = points.map(({ level }) => level);
  return [Math.max(...levels), Math.min(...levels)];
}

interface NamedLine {
  readonly level: number;
  readonly word: string;
  readonly sign: string;
}

function lineAt(
  row: number,
  rowOf: (level: number) => number,
  limits: NonNullable<PracticeChart['limits']>,
): NamedLine | null {
  const lines = [
    { level: limits.centreLevel, word: 'centre', sign: '..' },
    { level: limits.upperLevel, word: 'upper limit', sign: '- ' },
    { level: limits.lowerLevel, word: 'lower limit', sign: '- ' },
  ];
  return lines.find(({ level }) => rowOf(level) === row) ?? null;
}

function cell(point: ChartPoint, isHere: boolean, line: NamedLine | null): string {
  const ground = line?.sign ?? '  ';
  if (!isHere) return ground;
  return `${point.signal === null ? 'o' : '#'}${ground[1]}`;
}

/** Rows are equal factors, as the limits are. */
function rowScale(
  points: readonly ChartPoint[],
  { limits }: PracticeChart,
): (level: number) => number {
  const levels = points.map(({ level }) => level);
  if (limits !== null) levels.push(limits.upperLevel, limits.lowerLevel);
  const logs = levels.map(Math.log);
  const [low, high] = [Math.min(...logs), Math.max(...logs)];
  const span = high - low || 1;
  return (level) => Math.round(((high - Math.log(level)) / span) * (ROWS - 1));
}
