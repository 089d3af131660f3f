/** Tells whether a report says the same as the one before it, without keeping either. */
export class RepeatWatch {
  readonly #numbered: boolean;
  /** By report id; -1 before the first report. A hash is unsigned, so never negative. */
  readonly #lastHash: Float64Array = new Float64Array(256).fill(-1);

  /** @param numbered True where the first byte is the report's id, so that reports of each id repeat on their own. */
  constructor(numbered: boolean) {
    this.#numbered = numbered;
  }

  repeats(bytes: Uint8Array, start: number, length: number): boolean {
    const id = this.#numbered ? (bytes[start] ?? 0) : 0;
    const hash = fnv1a(bytes, start, length);
    const repeated = this.#lastHash[id] === hash;
    this.#lastHash[id] = hash;
    return repeated;
  }
}

/** 32-bit FNV-1a (Fowler, Noll and Vo). */
function fnv1a(bytes: Uint8Array, start: number, length: number): number {
  let hash = 0x811c9dc5;
  for (let i = start; i < start + length; i++) hash = Math.imul(hash ^ (bytes[i] ?? 0), 0x01000193);
  return hash >>> 0;
}
