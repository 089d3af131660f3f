import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import { Problem } from '../problem.ts';
import { lookOf } from '../screens/look.ts';
import { wrapText } from '../screens/write-text.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { cornerDrawing } from './corner-drawing.ts';
import { findCorner } from './corner-files.ts';
import { cornerJson } from './corner-json.ts';
import { cornerTable } from './corner-table.ts';

const COLS = 80;

/** Draws one corner from above and names its numbers. */
export const command: Command = {
  name: 'corner show',
  summary: 'draw a corner from above with its places, curvature and variant',
  positionals: 'CORNER',
  options: {
    variant: { type: 'string', value: 'V', help: 'one of its variants (default the first)' },
    json: { type: 'boolean', help: 'one JSON object: the path every metre, places and numbers' },
  },
  examples: [
    'ebbline corner show kiln-hairpin',
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
  const variant = variantOfSheet(sheet, typeof values.variant === 'string' ? values.variant : null);
  const corner = buildCorner(sheet, variant.name);
  if (values.json === true) {
    context.out(`${JSON.stringify(cornerJson(sheet, variant, corner))}\n`);
    return 0;
  }
  const look = lookOf(context.env, false, process.platform);
  const lines = [
    `${sheet.name}, ${sheet.cornerType}, ${variant.name}`,
    ...wrapText(sheet.advice ?? '', COLS),
    '',
    cornerDrawing(corner, look, context.units),
    '',
    ...cornerTable(sheet, variant, corner, context.units),
    '',
    'Slowest by radius alone; car, slope and bank may move it (`target derive`).',
  ];
  const text = lines.map((line) => `${line}\n`).join('');
  context.out(look.unicode ? text : text.replaceAll('°', ' deg'));
  return 0;
}
