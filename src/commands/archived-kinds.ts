import { CAR_FILES } from './car-files.ts';
import { CORNER_FILES } from './corner-files.ts';
import { PLAN_FILES } from './plan-files.ts';
import type { ProfileKind } from './profile-files.ts';
import { TARGET_FILES } from './target-files.ts';

/** The kinds of file that people write and that an archive carries. */
export const ARCHIVED_KINDS: readonly ProfileKind<unknown>[] = [
  TARGET_FILES,
  CAR_FILES,
  CORNER_FILES,
  PLAN_FILES,
];
