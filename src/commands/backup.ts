import { openExistingHistory } from '../history/open-history.ts';
import { Problem } from '../problem.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { misuseOf } from './misuse-of.ts';

const misuse = misuseOf('backup');

/** Copies the history to a new file. */
export const command: Command = {
  name: 'backup',
  summary: 'copy the whole history to a new file',
  positionals: '',
  options: {
    out: { type: 'string', value: 'FILE', help: 'the copy; never over an existing file' },
    json: { type: 'boolean', help: 'one JSON object instead of a line' },
  },
  examples: ['ebbline backup --out history-2026-11-25.sqlite'],
  run: backup,
};

async function backup(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  if (positionals.length > 0) throw misuse('it takes no names', 'Say --out FILE alone.');
  const { out, json } = values;
  if (typeof out !== 'string' || out === '') throw misuse('no file named', 'Add --out FILE.');
  const history = openExistingHistory(context.dataDir);
  if (history === null)
    throw new Problem('there is no history to copy', {
      where: context.dataDir,
      next: 'Drive some reps with `ebbline drill`, or say where the history is with --data-dir.',
    });
  try {
    if (history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    history.backup(out);
    const { label } = history;
    context.out(
      json === true
        ? `${JSON.stringify({ file: out, history: label })}\n`
        : `Copied ${label} to ${out}.\n`,
    );
  } finally {
    history.close();
  }
  return 0;
}
