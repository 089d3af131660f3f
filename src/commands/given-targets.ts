import type { Target } from '../target/target.ts';
import type { OptionValue } from './command.ts';
import { findTarget } from './target-files.ts';

/** The targets that the option of `GIVEN_TARGET` names. @throws Problem as `findTarget` does */
export function givenTargets(paths: OptionValue, dataDir: string): Promise<readonly Target[]> {
  const list = typeof paths === 'object' ? paths : [];
  return Promise.all(list.map((path) => findTarget(path, dataDir)));
}
