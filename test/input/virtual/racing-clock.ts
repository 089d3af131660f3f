import type { Clock } from '../../../src/input/virtual/clock.ts';

interface Waiting {
  readonly dueUs: number;
  readonly resolve: () => void;
}

/** A clock that stands at the next moment somebody waits for as soon as all that can be done before it is done. */
export class RacingClock implements Clock {
  #nowUs = 0;
  #waiting: Waiting[] = [];
  #isGoing = false;

  readonly nowUs = (): number => this.#nowUs;

  readonly wait = (ms: number): Promise<void> =>
    new Promise((resolve) => {
      this.#waiting.push({ dueUs: this.#nowUs + 1000 * ms, resolve });
      this.#waiting.sort((a, b) => a.dueUs - b.dueUs);
      if (!this.#isGoing) setImmediate(this.#goOn);
      this.#isGoing = true;
    });

  readonly #goOn = (): void => {
    const next = this.#waiting.shift();
    this.#isGoing = next !== undefined;
    if (next === undefined) return;
    this.#nowUs = next.dueUs;
    next.resolve();
    setImmediate(this.#goOn);
  };
}
