/** A hostile descriptor can be odd in thousands of places; a reader wants the first few. */
const MAX_WARNINGS = 24;

/** Oddities in words: each kept once, the first ones only, then one line with the count of the rest. */
export class WarningList {
  readonly #texts = new Set<string>();
  #leftOut = 0;

  add(text: string): void {
    if (this.#texts.has(text)) return;
    if (this.#texts.size < MAX_WARNINGS) this.#texts.add(text);
    else this.#leftOut++;
  }

  list(): readonly string[] {
    const texts = [...this.#texts];
    return this.#leftOut === 0 ? texts : [...texts, `and ${this.#leftOut} more`];
  }
}
