import { element, type Markup } from '../markup/markup.ts';
import { PICTURE_WIDTH, textWidth } from './picture-size.ts';
import type { PlotBox, Scale } from './plot.ts';

/** A scale with its name and the words of its numbers. */
export interface Axis {
  readonly scale: Scale;
  readonly name: string;
  readonly text: (value: number) => string;
  readonly ticks: readonly number[];
}

/** Lines across the plot at the ticks of the upright axis, its numbers at the left, its name above. */
export function uprightAxis({ scale, name, text, ticks }: Axis, box: PlotBox): Markup[] {
  return [
    element('text', { class: 'quiet', x: 2, y: box.top - 9 }, name),
    ...ticks.map((tick) =>
      element('path', { class: 'grid', d: `M${box.left},${at(scale, tick)}H${box.right}` }),
    ),
    ...ticks.map((tick) =>
      element('text', { class: 'quiet end', x: box.left - 4, y: scale(tick) + 4 }, text(tick)),
    ),
  ];
}

/** The base line with ticks and numbers below it, its name below those at the right. */
export function levelAxis({ scale, name, text, ticks }: Axis, box: PlotBox): Markup[] {
  return [
    element('path', { class: 'axis', d: `M${box.left},${box.bottom}H${box.right}` }),
    ...ticks.map((tick) =>
      element('path', { class: 'axis', d: `M${at(scale, tick)},${box.bottom}v4` }),
    ),
    ...ticks.map((tick) => levelNumber(scale(tick), text(tick), box)),
    element('text', { class: 'quiet end', x: box.right, y: box.bottom + 31 }, name),
  ];
}

/** Centred below its tick, but never over the edge of the picture. */
function levelNumber(x: number, text: string, { bottom }: PlotBox): Markup {
  const isAtEnd = x + textWidth(text) / 2 > PICTURE_WIDTH;
  const place = isAtEnd
    ? { class: 'quiet end', x: PICTURE_WIDTH - 1 }
    : { class: 'quiet middle', x };
  return element('text', { ...place, y: bottom + 16 }, text);
}

function at(scale: Scale, tick: number): number {
  return Math.round(100 * scale(tick)) / 100;
}
