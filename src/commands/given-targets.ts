import type { Target } from '../target/target.ts';
import type { OptionSpec, OptionValue } from './command.ts';
import { findTarget } from './target-files.ts';

/** The option that names target files which the history does not find again by itself. */
export const GIVEN_TARGET: OptionSpec = {
  type: 'string',
  value: 'FILE',
  multiple: true,
  help: 'a target file that is not in the usual folders',
};

/** The targets of that option. @throws Problem as `findTarget` does */
export function givenTargets(paths: OptionValue, dataDir: string): Promise<readonly Target[]> {
  const list = typeof paths === 'object' ? paths : [];
  return Promise.all(list.map((path) => findTarget(path, dataDir)));
}
