import { Problem } from '../problem.ts';
import { keyNumbers } from '../target/key-numbers.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { type ListedTarget, listTargets } from './target-files.ts';

/** Lists the targets that can be named by id. */
export const command: Command = {
  name: 'target list',
  summary: 'list the targets that can be named by id',
  positionals: '',
  options: { json: { type: 'boolean', help: 'one JSON object instead of a table' } },
  examples: ['ebbline target list', 'ebbline target list --json'],
  run: list,
};

async function list(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  if (positionals.length > 0)
    throw new Problem(`unexpected argument ${JSON.stringify(positionals[0])}`, {
      where: 'target list',
      next: 'See one target with `ebbline target show ID`.',
      exitCode: 2,
    });
  const listed = await listTargets(context.dataDir);
  for (const { path, ...entry } of listed)
    if (entry.target === null)
      context.err(`${path}: ${entry.problems} problems, see \`ebbline target check ${path}\`\n`);
  if (values.json === true) context.out(`${JSON.stringify({ targets: listed.flatMap(json) })}\n`);
  else context.out(table(listed));
  return 0;
}

function json(listed: ListedTarget): Record<string, unknown>[] {
  if (listed.target === null) return [];
  const { target, id, path, origin } = listed;
  return [
    {
      id,
      name: target.name,
      corner_type: target.cornerType,
      domain: target.domain,
      version: target.version,
      peak_level: target.peakLevel,
      release_s: Number(keyNumbers(target).releaseS.toFixed(3)),
      origin,
      file: path,
    },
  ];
}

function table(listed: readonly ListedTarget[]): string {
  const rows = listed.flatMap(({ target, id, origin }) =>
    target === null
      ? []
      : [
          [
            id,
            target.name,
            target.cornerType,
            `${(100 * target.peakLevel).toFixed(0)} %`,
            `${keyNumbers(target).releaseS.toFixed(1)} s`,
            origin,
          ],
        ],
  );
  return columns([['id', 'name', 'corner', 'peak', 'release', 'from'], ...rows]);
}

function columns(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i]!))
        .join('  ')
        .trimEnd(),
    )
    .map((line) => `${line}\n`)
    .join('');
}
