/** How many of one kind in an archive were what to a history. */
export interface MergeCounts {
  /** New here. */
  readonly added: number;
  /** Here already, and given a rating or an outcome that they did not have. */
  readonly extended: number;
  /** Here already, just like this. */
  readonly known: number;
  /** Here with other content, which stays; or belonging to such a one. */
  readonly conflicting: number;
}

export type MergedKind = 'practice' | 'rep' | 'note' | 'file';

interface Conflict {
  readonly kind: MergedKind;
  /** Identity; of a file its folder and name. */
  readonly id: string;
  readonly why: string;
}

export interface MergeReport {
  readonly counts: Readonly<Record<MergedKind, MergeCounts>>;
  /** The first thousand. */
  readonly conflicts: readonly Conflict[];
}

/** Why most things are in conflict. */
export const DIFFERS: string = 'it is here with other content';

const MOST_CONFLICTS = 1000;
const NONE: MergeCounts = { added: 0, extended: 0, known: 0, conflicting: 0 };

/** Counts what becomes of each part of an archive. */
export class MergeTally {
  readonly #counts: Record<MergedKind, MergeCounts> = {
    practice: NONE,
    rep: NONE,
    note: NONE,
    file: NONE,
  };
  readonly #conflicts: Conflict[] = [];

  count(kind: MergedKind, what: Exclude<keyof MergeCounts, 'conflicting'>): void {
    const counts = this.#counts[kind];
    this.#counts[kind] = { ...counts, [what]: counts[what] + 1 };
  }

  conflict(kind: MergedKind, id: string, why: string): void {
    const counts = this.#counts[kind];
    this.#counts[kind] = { ...counts, conflicting: counts.conflicting + 1 };
    if (this.#conflicts.length < MOST_CONFLICTS) this.#conflicts.push({ kind, id, why });
  }

  report(): MergeReport {
    return { counts: { ...this.#counts }, conflicts: [...this.#conflicts] };
  }
}
