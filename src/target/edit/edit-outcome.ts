import type { ProfileChange } from '../../profile/edit/profile-change.ts';

/** What a key asks of a file: changes and what to say of them, or why it cannot be. */
export type EditOutcome =
  | {
      readonly kind: 'changes';
      readonly changes: readonly ProfileChange[];
      /** Point to go on with; null for the one that was chosen. */
      readonly select: string | null;
      /** What was done, where the curve alone does not show it; else null. */
      readonly done: string | null;
    }
  | { readonly kind: 'refused'; readonly why: string };

export function changed(
  changes: readonly ProfileChange[],
  { select = null, done = null }: { select?: string | null; done?: string | null } = {},
): EditOutcome {
  return { kind: 'changes', changes, select, done };
}

export function refused(why: string): EditOutcome {
  return { kind: 'refused', why };
}
