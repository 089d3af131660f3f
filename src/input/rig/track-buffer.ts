import { EMPTY_TRACK, type Track } from '../../trace/track.ts';

/** Collects the samples of one batch; grows to the largest batch seen, so that a sample allocates nothing. */
export class TrackBuffer {
  #timeS: Float64Array = new Float64Array(64);
  #value: Float64Array = new Float64Array(64);
  #count = 0;

  push(timeS: number, value: number): void {
    if (this.#count === this.#timeS.length) this.#grow();
    this.#timeS[this.#count] = timeS;
    this.#value[this.#count] = value;
    this.#count += 1;
  }

  /** The samples since the last call, copied out. */
  take(): Track {
    const count = this.#count;
    if (count === 0) return EMPTY_TRACK;
    this.#count = 0;
    return { timeS: this.#timeS.slice(0, count), value: this.#value.slice(0, count) };
  }

  #grow(): void {
    this.#timeS = doubled(this.#timeS);
    this.#value = doubled(this.#value);
  }
}

function doubled(full: Float64Array): Float64Array {
  const larger = new Float64Array(full.length * 2);
  larger.set(full);
  return larger;
}
