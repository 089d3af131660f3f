import { checkTarget } from '../target/read-target.ts';
import type { Target } from '../target/target.ts';
import {
  findProfile,
  type ListedProfile,
  listProfiles,
  type ProfileKind,
} from './profile-files.ts';

/** Target files: bundled in profiles/targets, own ones in `<data-dir>/targets`. */
export const TARGET_FILES: ProfileKind<Target> = {
  noun: 'target',
  folder: 'targets',
  check: checkTarget,
};

/** The target that the user names by id or path. @throws Problem as `findProfile` does */
export function findTarget(idOrPath: string, dataDir: string): Promise<Target> {
  return findProfile(TARGET_FILES, idOrPath, dataDir);
}

/** All targets that can be named by id. */
export function listTargets(dataDir: string): Promise<readonly ListedProfile<Target>[]> {
  return listProfiles(TARGET_FILES, dataDir);
}
