import { atOnce, type InPieces } from '../score/in-pieces.ts';

/**
 * Work that can wait a little, done in what drawing leaves of the turns of the event loop: a piece after each batch, so
 * that no picture comes late for it.
 */
export class SpareTurns {
  readonly #due: InPieces<void>[] = [];
  #rehearsal: InPieces<void> | null = null;

  /** What has to be done, in this order. */
  add(work: InPieces<void>): void {
    this.#due.push(work);
  }

  /** What is done while nothing else is due and nobody minds; it need not ever be finished. */
  rehearse(rehearsal: InPieces<void>): void {
    this.#rehearsal = rehearsal;
  }

  /**
   * Does one piece.
   *
   * @param isCalm true where it may be one of the rehearsal
   */
  take(isCalm: boolean): void {
    // Off the list while it is done: what fails is not tried again, and `finish` in the midst of it finds the others.
    const work = this.#due.shift();
    if (work !== undefined) {
      if (work.next().done !== true) this.#due.unshift(work);
    } else if (isCalm && this.#rehearsal?.next().done === true) this.#rehearsal = null;
  }

  /** Does all that has to be done. */
  finish(): void {
    for (const work of this.#due.splice(0)) atOnce(work);
  }
}
