import type { OptionSpec } from './command.ts';

/** The option that names target files which the history does not find again by itself. */
export const GIVEN_TARGET: OptionSpec = {
  type: 'string',
  value: 'FILE',
  multiple: true,
  help: 'a target file that is not in the usual folders',
};

/** Why a target that was drilled by its path cannot be had: it lies anywhere, only who has the file can name it. */
export function notInFolders(id: string): string {
  return `there is no target ${JSON.stringify(id)} in the usual folders: name its file with --target`;
}
