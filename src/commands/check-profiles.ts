import { Problem } from '../problem.ts';
import { inOrder, type ProfileProblem, placed } from '../profile/profile-problem.ts';
import type { CommandContext, CommandInput } from './command.ts';
import { type ProfileKind, readProfileText } from './profile-files.ts';
import { withSchemaPlace } from './schema-place.ts';

/** What came of one file. */
interface CheckedFile {
  readonly file: string;
  readonly problems: readonly ProfileProblem[];
  /** What is allowed and still hardly meant. */
  readonly warnings: readonly string[];
}

/**
 * Checks every named file and shows all problems at once.
 *
 * @returns exit code 1 where any file has a problem
 * @throws Problem (exit code 2) where no file is named
 */
export async function checkProfiles<T>(
  kind: ProfileKind<T>,
  warningsOf: (value: T) => readonly string[],
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  if (positionals.length === 0)
    throw new Problem('no file named', {
      where: `${kind.noun} check`,
      next: `Give the path of a ${kind.noun} file: ebbline ${kind.noun} check FILE`,
      exitCode: 2,
    });
  const files: CheckedFile[] = [];
  for (const file of positionals) files.push(await checkFile(kind, warningsOf, file));
  if (values.json === true) context.out(`${JSON.stringify({ files: files.map(json) })}\n`);
  else for (const file of files) report(file, context);
  return files.some(({ problems }) => problems.length > 0) ? 1 : 0;
}

async function checkFile<T>(
  kind: ProfileKind<T>,
  warningsOf: (value: T) => readonly string[],
  file: string,
): Promise<CheckedFile> {
  try {
    const text = await readProfileText(file, kind.noun);
    const checked = kind.check(text, file);
    const schema = schemaWarnings(text, file);
    return checked.kind === 'refused'
      ? { file, problems: inOrder(checked.problems), warnings: schema }
      : { file, problems: [], warnings: [...schema, ...warningsOf(checked.value)] };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    // One file that cannot be read does not keep the others from being checked.
    const problem = { line: 1, column: 1, what: error.message, next: error.next };
    return { file, problems: [problem], warnings: [] };
  }
}

/** Editors complete keys and mark mistakes only where they find the schema. */
function schemaWarnings(text: string, file: string): readonly string[] {
  const mended = withSchemaPlace(text, file);
  if (mended === text) return [];
  const [line] = mended.split('\n');
  return [`Editors find no schema by the first line; this one leads to it:\n  ${line}`];
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
