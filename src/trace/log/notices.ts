/** Something repaired or left out, said once with how often and where first. */
export interface Notice {
  readonly what: string;
  readonly count: number;
  /** Line of the file, null where it concerns the file as a whole. */
  readonly line: number | null;
}

/** Collects notices; the same words count up. */
export class Notices {
  readonly #found = new Map<string, { count: number; line: number | null }>();

  add(what: string, line: number | null): void {
    const known = this.#found.get(what);
    if (known === undefined) this.#found.set(what, { count: 1, line });
    else known.count++;
  }

  list(): Notice[] {
    return [...this.#found].map(([what, { count, line }]) => ({ what, count, line }));
  }
}
