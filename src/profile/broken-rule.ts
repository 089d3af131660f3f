import type { ProfilePath } from './profile-text.ts';

/** A rule that the values of one file break together, with the path in the file to blame. */
export interface BrokenRule {
  readonly path: ProfilePath;
  readonly what: string;
  readonly next: string;
}
