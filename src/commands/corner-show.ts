import { buildCar } from '../car/build-car.ts';
import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import { Problem } from '../problem.ts';
import { lookOf } from '../screens/look.ts';
import { wrapText } from '../screens/write-text.ts';
import { deriveTarget } from '../target/derive/derive-target.ts';
import { findCar } from './car-files.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { cornerDrawing } from './corner-drawing.ts';
import { closingWords, drivenLetters } from './corner-driven.ts';
import { findCorner } from './corner-files.ts';
import { cornerJson } from './corner-json.ts';
import { cornerLetters } from './corner-letters.ts';
import { cornerTable } from './corner-table.ts';
import { drillIt } from './drill-it.ts';
import { textOption } from './option-value.ts';

const COLS = 80;

/** Draws one corner from above and names its numbers. */
export const command: Command = {
  name: 'corner show',
  summary: 'draw a corner from above with its places, curvature and variant',
  positionals: 'CORNER',
  options: {
    variant: { type: 'string', value: 'V', help: 'one of its variants (default the first)' },
    car: { type: 'string', value: 'CAR', help: 'a car whose target is placed in it' },
    json: { type: 'boolean', help: 'one JSON object: the path every metre, places and numbers' },
  },
  examples: [
    'ebbline corner show kiln-hairpin',
    'ebbline corner show kiln-hairpin --car gt',
    'ebbline corner show ferry-chicane --variant wet --json',
  ],
  run: show,
};

async function show(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  const [wanted, ...others] = positionals;
  if (wanted === undefined || others.length > 0)
    throw new Problem(wanted === undefined ? 'no corner named' : 'more than one corner named', {
      where: 'corner show',
      next: 'Give the id of one corner or the path of its file; `ebbline corner list` lists ids.',
      exitCode: 2,
    });
  const sheet = await findCorner(wanted, context.dataDir);
  const variant = variantOfSheet(sheet, textOption(values.variant));
  const corner = buildCorner(sheet, variant.name);
  const driven =
    typeof values.car === 'string'
      ? deriveTarget(buildCar(await findCar(values.car, context.dataDir), variant.car), corner)
      : null;
  const letters = cornerLetters(corner, driven === null ? [] : drivenLetters(driven));
  if (values.json === true) {
    context.out(`${JSON.stringify(cornerJson(sheet, variant, corner, letters))}\n`);
    return 0;
  }
  const look = lookOf(context.env, false, process.platform);
  const lines = [
    `${sheet.name}, ${sheet.cornerType}, ${variant.name}`,
    ...wrapText(sheet.advice ?? '', COLS),
    '',
    cornerDrawing(corner, letters, look, context.units),
    '',
    ...cornerTable(sheet, variant, corner, letters, context.units),
    '',
    ...wrapText(closingWords(driven, context.units), COLS),
  ];
  const text = lines.map((line) => `${line}\n`).join('');
  context.out(look.unicode ? text : text.replaceAll('°', ' deg'));
  context.out(
    drillIt('--corner', wanted, ...given('car', values.car), ...given('variant', values.variant)),
  );
  return 0;
}

/** An option as it was given, for the next command. */
function given(name: string, value: OptionValue): readonly string[] {
  return typeof value === 'string' ? [`--${name}`, value] : [];
}
