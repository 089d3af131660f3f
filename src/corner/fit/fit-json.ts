import { FIGURE_WORDS, inFileUnit } from './figure-words.ts';
import type { CornerFit } from './fit-corner.ts';
import { FIGURES, type Figure } from './zone-fit.ts';

/** A fitted corner for other programs: each figure in the unit its name ends in, with how it was come by. */
export function fitJson(fit: CornerFit): Record<string, unknown> {
  const figures = FIGURES.map((figure) => [FIGURE_WORDS[figure].field, figureJson(figure, fit)]);
  return {
    zones: fit.zones,
    left_out: fit.leftOut.map(({ number, reason }) => ({ zone: number, reason })),
    car: fit.carName,
    direction: { value: fit.direction.side, basis: fit.direction.basis },
    entry: { value: fit.entry.kind, basis: fit.entry.basis, rule: fit.entry.rule },
    figures: Object.fromEntries(figures),
    shifts_before_slowest_m: fit.shiftsM.map((beforeM) => Number(beforeM.toFixed(1)) + 0),
    unknown: fit.unknown,
    cautions: fit.cautions,
  };
}

function figureJson(figure: Figure, { figures }: CornerFit): object | null {
  const found = figures[figure];
  if (found === undefined) return null;
  const { value, low, high, count, basis, rule } = found;
  return {
    value: inFileUnit(figure, value),
    lowest: inFileUnit(figure, low),
    highest: inFileUnit(figure, high),
    zones_count: count,
    basis,
    rule,
  };
}
