import { Problem } from '../problem.ts';
import type { CommandContext, CommandInput } from './command.ts';
import { listProfiles, type ProfileKind, type SoundProfile } from './profile-files.ts';
import { textColumns } from './text-columns.ts';

/** How one kind of profile is listed. */
export interface ProfileList<T> {
  readonly heads: readonly string[];
  cells(listed: SoundProfile<T>): readonly string[];
  json(listed: SoundProfile<T>): Record<string, unknown>;
}

/** Prints what can be named by id; a file with problems is named on stderr and keeps nothing else from the list. */
export async function printProfileList<T>(
  kind: ProfileKind<T>,
  list: ProfileList<T>,
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  if (positionals.length > 0)
    throw new Problem(`unexpected argument ${JSON.stringify(positionals[0])}`, {
      where: `${kind.noun} list`,
      next: `See one ${kind.noun} with \`ebbline ${kind.noun} show ID\`.`,
      exitCode: 2,
    });
  const listed = await listProfiles(kind, context.dataDir);
  for (const entry of listed)
    if (entry.kind === 'refused')
      context.err(
        `${entry.path}: ${entry.problems} problems, see \`ebbline ${kind.noun} check ${entry.path}\`\n`,
      );
  const sound = listed.filter((entry) => entry.kind === 'read');
  if (values.json === true)
    context.out(
      `${JSON.stringify({ [kind.folder]: sound.map((entry) => ({ ...list.json(entry), origin: entry.origin, file: entry.path })) })}\n`,
    );
  else
    context.out(
      textColumns([
        [...list.heads, 'from'],
        ...sound.map((entry) => [...list.cells(entry), entry.origin]),
      ]),
    );
  return 0;
}
