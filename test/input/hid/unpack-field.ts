/** An independent decoder, bit by bit: the counterpart of `packField`. */
export function unpackField(
  bytes: Uint8Array,
  bitOffset: number,
  bitSize: number,
  signed: boolean,
): number {
  let bits = 0n;
  for (let i = bitSize - 1; i >= 0; i--) {
    const at = bitOffset + i;
    bits = bits * 2n + BigInt(Math.trunc(bytes[Math.trunc(at / 8)]! / 2 ** (at % 8)) % 2);
  }
  return Number(signed ? BigInt.asIntN(bitSize, bits) : bits);
}
