import { Problem } from '../problem.ts';
import { lookOf } from '../screens/look.ts';
import { wrapText } from '../screens/write-text.ts';
import type { Target } from '../target/target.ts';
import { targetJson } from '../target/target-json.ts';
import { targetTable } from '../target/target-table.ts';
import { trackWarnings } from '../target/trackability.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { drillIt } from './drill-it.ts';
import { targetDrawing } from './target-drawing.ts';
import { findTarget } from './target-files.ts';

const COLS = 80;

/** Draws one target and names its numbers. */
export const command: Command = {
  name: 'target show',
  summary: 'draw a target with its key points, rates and corridor',
  positionals: 'TARGET',
  options: {
    json: { type: 'boolean', help: 'one JSON object: the curve every 10 ms, marks and numbers' },
  },
  examples: ['ebbline target show hairpin', 'ebbline target show my-corner.yaml --json'],
  run: show,
};

async function show(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  const [wanted, ...others] = positionals;
  if (wanted === undefined || others.length > 0)
    throw new Problem(wanted === undefined ? 'no target named' : 'more than one target named', {
      where: 'target show',
      next: 'Give the id of one target or the path of its file; `ebbline target list` lists ids.',
      exitCode: 2,
    });
  const target = await findTarget(wanted, context.dataDir);
  if (values.json === true) context.out(`${JSON.stringify(targetJson(target))}\n`);
  else context.out(`${page(target, context)}${drillIt('--target', wanted)}`);
  return 0;
}

function page(target: Target, context: CommandContext): string {
  const look = lookOf(context.env, false, process.platform);
  const lines = [
    `${target.name}, ${target.cornerType}`,
    `${target.id}, version ${target.version}`,
    ...wrapText(target.advice ?? '', COLS),
    '',
    targetDrawing(target, look),
    '',
    ...targetTable(target, context.units),
    ...trackWarnings(target).flatMap((warning) => wrapText(`Caution: ${warning}`, COLS)),
  ];
  const text = lines.map((line) => `${line}\n`).join('');
  return look.unicode ? text : text.replaceAll('°', ' deg');
}
