/** An independent encoder: the bits of `value` one by one, as USB HID 1.11, 8.4 lays them out. */
export function packField(
  bytes: Uint8Array,
  bitOffset: number,
  bitSize: number,
  value: number,
): void {
  const bits = BigInt.asUintN(bitSize, BigInt(value));
  for (let i = 0; i < bitSize; i++) {
    const at = bitOffset + i;
    const mask = 2 ** (at % 8);
    const cleared = bytes[Math.trunc(at / 8)]! & (255 - mask);
    bytes[Math.trunc(at / 8)] = cleared + ((bits >> BigInt(i)) % 2n === 1n ? mask : 0);
  }
}
