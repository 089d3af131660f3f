import type { AxisRole } from '../rig.ts';

/** What `rig check` looks at. */
export type CheckName =
  | 'connection'
  | 'rate'
  | 'jitter'
  | 'gaps'
  | 'drops'
  | 'reporting'
  | 'repeats'
  | 'movement'
  | 'noise'
  | 'resolution'
  | 'sensor end'
  | 'full scale'
  | 'rest'
  | 'drift';

/** One thing about the rig, judged. */
export interface Verdict {
  readonly device: string;
  /** Null where it is about the whole device. */
  readonly role: AxisRole | null;
  readonly check: CheckName;
  /** `unknown` where the check did not see enough to tell. */
  readonly verdict: 'good' | 'limited' | 'bad' | 'unknown';
  readonly found: string;
  /** What to do about it; null where nothing is to be done. */
  readonly fix: string | null;
}

/** The part of a verdict that its judge decides. */
export type Judged = Pick<Verdict, 'verdict' | 'found' | 'fix'>;

export const good = (found: string): Judged => ({ verdict: 'good', found, fix: null });

export const unknown = (found: string, fix: string): Judged => ({ verdict: 'unknown', found, fix });

/** Worse the larger a value is: `good` up to the first limit, `limited` up to the second, `bad` above. */
export function byLimits(
  value: number,
  [goodUpTo, limitedUpTo]: readonly [number, number],
  found: string,
  fix: string,
): Judged {
  if (value <= goodUpTo) return good(found);
  return { verdict: value <= limitedUpTo ? 'limited' : 'bad', found, fix };
}
