/** Adds up the time in which a value that holds until the next one fulfilled a condition. */
export class HeldTime {
  #since: number | null = null;
  #totalUs = 0;

  /** What the value is like from now on. */
  turn(timeUs: number, held: boolean): void {
    this.until(timeUs);
    this.#since = held ? timeUs : null;
  }

  /** The value has not changed until now. */
  until(timeUs: number): void {
    if (this.#since === null || timeUs <= this.#since) return;
    this.#totalUs += timeUs - this.#since;
    this.#since = timeUs;
  }

  get totalS(): number {
    return this.#totalUs / 1e6;
  }
}
