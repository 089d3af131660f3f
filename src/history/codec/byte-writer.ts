/** Bytes that grow as values are appended. Variable-length integers are little-endian groups of seven bits (LEB128). */
export class ByteWriter {
  #bytes: Uint8Array = new Uint8Array(4096);
  #length = 0;

  /** A whole number from 0 to 2^32 - 1. */
  unsigned(value: number): void {
    this.#reserve(5);
    let rest = value >>> 0;
    while (rest > 127) {
      this.#bytes[this.#length++] = (rest & 127) | 128;
      rest >>>= 7;
    }
    this.#bytes[this.#length++] = rest;
  }

  /** A whole number of 32 bits with sign, zigzag-mapped so that small ones of either sign are short. */
  signed(value: number): void {
    this.unsigned((value << 1) ^ (value >> 31));
  }

  float(value: number): void {
    this.#reserve(8);
    new DataView(this.#bytes.buffer).setFloat64(this.#length, value, true);
    this.#length += 8;
  }

  text(value: string): void {
    const utf8 = new TextEncoder().encode(value);
    this.unsigned(utf8.length);
    this.#reserve(utf8.length);
    this.#bytes.set(utf8, this.#length);
    this.#length += utf8.length;
  }

  /** What was written so far, not copied. */
  bytes(): Uint8Array {
    return this.#bytes.subarray(0, this.#length);
  }

  #reserve(more: number): void {
    if (this.#length + more <= this.#bytes.length) return;
    const larger = new Uint8Array(Math.max(2 * this.#bytes.length, this.#length + more));
    larger.set(this.bytes());
    this.#bytes = larger;
  }
}
