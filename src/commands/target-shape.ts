import { Problem } from '../problem.ts';
import { lookOf } from '../screens/look.ts';
import { wrapText } from '../screens/write-text.ts';
import { checkTarget } from '../target/read-target.ts';
import { shapedFileText } from '../target/shaped-file.ts';
import type { Target } from '../target/target.ts';
import { targetJson } from '../target/target-json.ts';
import { targetTable } from '../target/target-table.ts';
import { trackWarnings } from '../target/trackability.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { textOption } from './option-value.ts';
import { withSchemaPlace } from './schema-place.ts';
import { SHAPE_OPTIONS, shapeWish } from './shape-wish.ts';
import { targetDrawing } from './target-drawing.ts';
import { writeNewFile } from './write-new-file.ts';

const NAME = 'target shape';
const COLS = 80;

/** Makes a target of a shape. */
export const command: Command = {
  name: NAME,
  summary: 'make a target of a shape by options: draw it, or write its file',
  positionals: '',
  options: {
    ...SHAPE_OPTIONS,
    out: { type: 'string', value: 'FILE', help: 'write a target file; never over an existing one' },
    json: { type: 'boolean', help: 'one JSON object: the curve every 10 ms, marks and numbers' },
  },
  examples: [
    'ebbline target shape --peak 0.85 --hit-s 0.12 --hold-s 0.2 --release-s 1.7 --shape power-law --exponent 1.4',
    'ebbline target shape --peak 0.8 --hit-s 0.13 --release-s 1.5 --name "My corner" --out my-corner.yaml',
  ],
  run: shape,
};

async function shape(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  if (positionals.length > 0)
    throw new Problem(`${positionals[0]} belongs to no option`, {
      where: NAME,
      next: `See \`ebbline ${NAME} --help\`.`,
      exitCode: 2,
    });
  const out = textOption(values.out);
  const text = shapedFileText(shapeWish(values));
  const target = shaped(text, out ?? 'shape.yaml');
  if (out !== null) await writeNewFile(out, withSchemaPlace(text, out), 'target');
  if (values.json === true)
    context.out(`${JSON.stringify({ ...targetJson(target), written_to: out })}\n`);
  else context.out(page(target, context));
  context.err(
    out === null ? 'Not written: name a file with --out FILE.yaml.\n' : `Written to ${out}.\n`,
  );
  return 0;
}

/** The keys of the file are those of the options, so that its problems say which one to change. */
function shaped(text: string, fileName: string): Target {
  const reading = checkTarget(text, fileName);
  if (reading.kind === 'read') return reading.value;
  const [first, ...others] = reading.problems;
  const more = others.map(({ what, next }) => ` ${what}. ${next}`).join('');
  throw new Problem(first!.what, {
    where: NAME,
    next: `${first!.next}${more}`,
    exitCode: 2,
  });
}

function page(target: Target, { env, units }: CommandContext): string {
  const look = lookOf(env, false, process.platform);
  const lines = [
    `${target.name}, ${target.cornerType}`,
    '',
    targetDrawing(target, look),
    '',
    ...targetTable(target, units),
    ...trackWarnings(target).flatMap((warning) => wrapText(`Caution: ${warning}`, COLS)),
  ];
  const text = lines.map((line) => `${line}\n`).join('');
  return look.unicode ? text : text.replaceAll('°', ' deg');
}
