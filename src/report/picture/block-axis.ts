import { scaleLinear } from 'd3-scale';
import type { BlockGrid } from '../../drill/diagnosis/block-grid.ts';
import { BRAKE_PHASES } from '../../drill/diagnosis/brake-phases.ts';
import type { TextUnits } from '../../unit-text.ts';
import { feetFromMetres } from '../../units.ts';
import { element, type Markup } from '../markup/markup.ts';
import { type Axis, levelAxis } from './axes.ts';
import { PICTURE_WIDTH, textWidth } from './picture-size.ts';
import type { PlotBox } from './plot.ts';

/** Where the places of a block's grid lie, for reps over time or, with the live car, over distance. */
export interface Along {
  readonly unit: 's' | 'm' | 'ft';
  readonly at: Float64Array;
}

const ROW = 14;

const NAMES: Readonly<Record<Along['unit'], string>> = {
  s: 'time, s',
  m: 'place, m from turn-in',
  ft: 'place, ft from turn-in',
};

export function alongTime({ target, fromS, stepS }: BlockGrid): Along {
  return { unit: 's', at: target.map((_, i) => fromS + i * stepS) };
}

/** Places of the road in metres from turn-in, in the units that they are read in. */
export function alongRoad(placesM: Float64Array, units: TextUnits): Along {
  return units === 'metric'
    ? { unit: 'm', at: placesM }
    : { unit: 'ft', at: placesM.map(feetFromMetres) };
}

/** Head of a table's column of places. */
export function alongHead({ unit }: Along): string {
  return unit === 's' ? NAMES.s : `${unit} from turn-in`;
}

export function blockAxis({ unit, at }: Along, { left, right }: PlotBox): Axis {
  const ends = [at[0] ?? 0, at.at(-1) ?? 1];
  const scale = scaleLinear().domain(ends).range([left, right]);
  return {
    scale,
    name: NAMES[unit],
    text: (value) => `${unit !== 's' && value > 0 ? '+' : ''}${value}`,
    ticks: scale.ticks(6),
  };
}

interface BlockFoot {
  readonly marks: readonly Markup[];
  readonly height: number;
}

/** The scale, and below it the phases as they stand in the table. */
export function blockFoot(axis: Axis, along: Along, grid: BlockGrid, box: PlotBox): BlockFoot {
  const names = phaseNames(axis, along, grid);
  const rows = names.reduce((most, { row }) => Math.max(most, row), 0);
  const words = names.map(({ phase, x, row }) =>
    element('text', { class: 'middle', x, y: box.bottom + 46 + ROW * row }, phase),
  );
  return { marks: [...levelAxis(axis, box), ...words], height: 52 + ROW * rows };
}

/** Every other phase is shaded, so that it is seen where each begins. */
export function phaseShades(
  { scale }: Axis,
  { at }: Along,
  { phases }: BlockGrid,
  { top, bottom }: PlotBox,
): Markup[] {
  return BRAKE_PHASES.filter((_, i) => i % 2 === 1).map((phase) => {
    const [x, end] = [scale(at[phases[phase].from]!), scale(at[phases[phase].to]!)];
    const width = Math.max(0, end - x);
    return element('rect', { class: 'band', x, y: top, width, height: bottom - top });
  });
}

/** Each in the middle of its phase, in a second row where the first has no room. */
function phaseNames(
  { scale }: Axis,
  { at }: Along,
  { phases }: BlockGrid,
): { readonly phase: string; readonly x: number; readonly row: number }[] {
  let row = 0;
  let lastEnd = Number.NEGATIVE_INFINITY;
  return BRAKE_PHASES.map((phase) => {
    const { from, to } = phases[phase];
    const half = textWidth(phase) / 2;
    const middle = (scale(at[from]!) + scale(at[to]!)) / 2;
    const x = Math.min(Math.max(middle, half), PICTURE_WIDTH - half);
    row = x - half < lastEnd + 4 ? 1 - row : 0;
    lastEnd = x + half;
    return { phase, x, row };
  });
}
