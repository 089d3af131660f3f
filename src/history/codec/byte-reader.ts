/** Reads what ByteWriter wrote. Every method throws RangeError where the bytes end early or are not of its kind. */
export class ByteReader {
  readonly #bytes: Uint8Array;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
  }

  get left(): number {
    return this.#bytes.length - this.#at;
  }

  unsigned(): number {
    let value = 0;
    for (let scale = 1; scale <= 2 ** 28; scale *= 128) {
      const byte = this.#next();
      value += (byte & 127) * scale;
      if (byte < 128) return inRange(value);
    }
    throw new RangeError('an integer is longer than 32 bits');
  }

  signed(): number {
    const zigzag = this.unsigned();
    return (zigzag >>> 1) ^ -(zigzag & 1);
  }

  /** Passes over so many integers without reading them. */
  skipIntegers(count: number): void {
    for (let left = count; left > 0; ) if (this.#next() < 128) left--;
  }

  float(): number {
    const at = this.#skip(8);
    return new DataView(this.#bytes.buffer, this.#bytes.byteOffset).getFloat64(at, true);
  }

  text(): string {
    const length = this.unsigned();
    const at = this.#skip(length);
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(
      this.#bytes.subarray(at, at + length),
    );
  }

  #next(): number {
    const byte = this.#bytes[this.#at++];
    if (byte === undefined) throw new RangeError('the bytes end early');
    return byte;
  }

  #skip(count: number): number {
    if (count > this.left) throw new RangeError('the bytes end early');
    const at = this.#at;
    this.#at += count;
    return at;
  }
}

function inRange(value: number): number {
  if (value > 0xffff_ffff) throw new RangeError('an integer is longer than 32 bits');
  return value;
}
