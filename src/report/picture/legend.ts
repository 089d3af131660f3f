import { element, type Markup } from '../markup/markup.ts';
import { PICTURE_WIDTH, textWidth } from './picture-size.ts';

/** How one kind of mark looks, and what it is called. */
export interface LegendEntry {
  readonly name: string;
  /** A line across a sample, a filled sample, or a mark in its middle. */
  readonly sample: 'line' | 'fill' | ((x: number, y: number) => Markup);
  readonly look: string;
}

interface Legend {
  readonly marks: readonly Markup[];
  readonly height: number;
}

const ROW = 18;
const SAMPLE = 24;

/** Entries one after the other, in as many rows as they need. */
export function legend(entries: readonly LegendEntry[]): Legend {
  let [x, y] = [4, 14];
  const marks: Markup[] = [];
  for (const { name, sample, look } of entries) {
    const width = SAMPLE + 5 + textWidth(name) + 10;
    if (x > 4 && x + width > PICTURE_WIDTH) [x, y] = [4, y + ROW];
    marks.push(sampleMark(sample, look, x, y - 4));
    marks.push(element('text', { x: x + SAMPLE + 5, y }, name));
    x += width;
  }
  return { marks, height: y + 4 };
}

function sampleMark(sample: LegendEntry['sample'], look: string, x: number, y: number): Markup {
  if (sample === 'line')
    return element('path', { class: `line ${look}`, d: `M${x},${y}h${SAMPLE}` });
  if (sample === 'fill')
    return element('rect', { class: look, x, y: y - 5, width: SAMPLE, height: 10 });
  return sample(x + SAMPLE / 2, y);
}
