import { area, curveLinear, line } from 'd3-shape';
import { element, type Markup } from '../markup/markup.ts';
import type { Scale } from './plot.ts';

/** More points than this a picture cannot show. */
const MOST_POINTS = 240;

/** Both scales of a plot. */
export interface Scales {
  readonly x: Scale;
  readonly y: Scale;
}

/** Indices that stand for all of so many points, the last among them. */
export function shownPlaces(count: number, most: number = MOST_POINTS): number[] {
  const step = Math.max(1, Math.ceil(count / most));
  const places = Array.from({ length: Math.ceil(count / step) }, (_, i) => i * step);
  return places.at(-1) === count - 1 || count === 0 ? places : [...places, count - 1];
}

/** A line through points. */
export function linePath(
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  { x, y }: Scales,
  look: string,
): Markup {
  const path = line<number>()
    .x((i) => x(xs[i]!))
    .y((i) => y(ys[i]!))
    .curve(curveLinear)
    .digits(1);
  return element('path', { class: `line ${look}`, d: path(shownPlaces(xs.length)) ?? '' });
}

/** What lies between two curves over the same places. */
export function areaPath(
  xs: ArrayLike<number>,
  low: ArrayLike<number>,
  high: ArrayLike<number>,
  { x, y }: Scales,
  look: string,
): Markup {
  const path = area<number>()
    .x((i) => x(xs[i]!))
    .y0((i) => y(low[i]!))
    .y1((i) => y(high[i]!))
    .digits(1);
  return element('path', { class: look, d: path(shownPlaces(xs.length)) ?? '' });
}
