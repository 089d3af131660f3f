import { FIGURE_WORDS, metricText, rangeText } from '../corner/fit/figure-words.ts';
import type { CornerFit, Merged } from '../corner/fit/fit-corner.ts';
import { FIGURES, type Figure } from '../corner/fit/zone-fit.ts';
import { wrapText } from '../screens/write-text.ts';
import { distanceText, speedText } from '../unit-text.ts';
import type { CommandContext } from './command.ts';

const COLS = 80;
const LABEL_COLS = 18;
const VALUE_COLS = 13;
const BEFORE: ReadonlySet<Figure> = new Set(['brakePointM', 'turnInM', 'lastDownshiftM']);

type Units = CommandContext['units'];

/** A fitted corner for people: each number with how it was come by, then what the log could not say. */
export function fitLines(name: string, fit: CornerFit, units: Units): string[] {
  const one = fit.zones.length === 1;
  const zones = one ? `zone ${fit.zones[0]}` : `zones ${fit.zones.join(', ')}`;
  return [
    ...wrapText(`${name}: a ${fit.direction.side}-hander from ${zones}`, COLS),
    '',
    ...FIGURES.flatMap((figure) => {
      const found = fit.figures[figure];
      return found === undefined ? [] : figureLines(figure, found, units);
    }),
    ...row('entry', fit.entry.kind, `${fit.entry.basis}: ${fit.entry.rule}`),
    '',
    'Places are before the slowest point. The log could not say:',
    ...fit.unknown.flatMap((line) => hanging('- ', line)),
    ...fit.leftOut.flatMap(({ number, reason }) =>
      hanging('', `Zone ${number} was left out: ${reason}.`),
    ),
    ...fit.cautions.flatMap((line) => hanging('Caution: ', line)),
    ...wrapText(
      'What was done, not what could be done: a starting point, to be approached from the safe side, with an instructor.',
      COLS,
    ),
  ];
}

function figureLines(figure: Figure, found: Merged, units: Units): string[] {
  const text = (value: number): string => valueText(figure, value, units);
  const spread = found.count === 1 ? '' : `${rangeText(text(found.low), text(found.high))}, `;
  return row(
    FIGURE_WORDS[figure].label,
    text(found.value),
    `${spread}${found.basis}: ${found.rule}`,
  );
}

function row(label: string, value: string, words: string): string[] {
  return hanging(label.padEnd(LABEL_COLS) + value.padEnd(VALUE_COLS), words);
}

/** Longer words go on below their own start. */
function hanging(start: string, words: string): string[] {
  return wrapText(words, COLS - start.length).map(
    (part, i) => (i === 0 ? start : ' '.repeat(start.length)) + part,
  );
}

function valueText(figure: Figure, value: number, units: Units): string {
  const { kind } = FIGURE_WORDS[figure];
  if (kind === 'speed') return speedText(value, units);
  if (kind !== 'distance') return metricText(figure, value);
  const isAfter = BEFORE.has(figure) && value < 0;
  return `${isAfter ? '+' : ''}${distanceText(Math.abs(value), units, 1)}`;
}
