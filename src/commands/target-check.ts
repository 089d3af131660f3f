import { Problem } from '../problem.ts';
import { inOrder, type ProfileProblem, placed } from '../profile/profile-problem.ts';
import { checkTarget } from '../target/read-target.ts';
import { trackWarnings } from '../target/trackability.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { readTargetText } from './target-files.ts';

/** Checks target files and shows every problem at once. */
export const command: Command = {
  name: 'target check',
  summary: 'check target files: every problem with line and column',
  positionals: 'FILE...',
  options: { json: { type: 'boolean', help: 'one JSON object instead of lines' } },
  examples: ['ebbline target check my-corner.yaml', 'ebbline target check *.yaml --json'],
  run: check,
};

/** What came of one file. */
interface CheckedFile {
  readonly file: string;
  readonly problems: readonly ProfileProblem[];
  /** Of a sound target: what a foot cannot follow or a car cannot do. */
  readonly warnings: readonly string[];
}

async function check(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  if (positionals.length === 0)
    throw new Problem('no file named', {
      where: 'target check',
      next: 'Give the path of a target file: ebbline target check FILE',
      exitCode: 2,
    });
  const files: CheckedFile[] = [];
  for (const file of positionals) files.push(await checkFile(file));
  if (values.json === true) context.out(`${JSON.stringify({ files: files.map(json) })}\n`);
  else for (const file of files) report(file, context);
  return files.some(({ problems }) => problems.length > 0) ? 1 : 0;
}

async function checkFile(file: string): Promise<CheckedFile> {
  try {
    const reading = checkTarget(await readTargetText(file), file);
    if (reading.kind === 'refused')
      return { file, problems: inOrder(reading.problems), warnings: [] };
    return { file, problems: [], warnings: trackWarnings(reading.target) };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    // One file that cannot be read does not keep the others from being checked.
    const problem = { line: 1, column: 1, what: error.message, next: error.next };
    return { file, problems: [problem], warnings: [] };
  }
}

function report({ file, problems, warnings }: CheckedFile, { out, err }: CommandContext): void {
  for (const problem of problems)
    err(`${placed(file, problem)}: ${problem.what}\n  ${problem.next}\n`);
  for (const warning of warnings) err(`${file}: ${warning}\n`);
  if (problems.length === 0) out(`${file}: ok\n`);
}

function json({ file, problems, warnings }: CheckedFile): Record<string, unknown> {
  return { file, ok: problems.length === 0, problems, warnings };
}
