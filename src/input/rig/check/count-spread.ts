/** Running mean and spread of counts (Welford 1962), so that a check may last as long as it likes. */
export class CountSpread {
  #count = 0;
  #mean = 0;
  #squares = 0;
  #min = Number.POSITIVE_INFINITY;
  #max = Number.NEGATIVE_INFINITY;

  add(counts: number): void {
    this.#count += 1;
    const delta = counts - this.#mean;
    this.#mean += delta / this.#count;
    this.#squares += delta * (counts - this.#mean);
    this.#min = Math.min(this.#min, counts);
    this.#max = Math.max(this.#max, counts);
  }

  /** Null before the first count. */
  get range(): { readonly min: number; readonly max: number } | null {
    return this.#count === 0 ? null : { min: this.#min, max: this.#max };
  }

  /** Null before the first count. */
  get mean(): number | null {
    return this.#count === 0 ? null : this.#mean;
  }

  /** Standard deviation; null before the second count. */
  get deviation(): number | null {
    return this.#count < 2 ? null : Math.sqrt(this.#squares / (this.#count - 1));
  }
}
