/**
 * Writes a value into a report, least significant bit first, as fields of a HID report are laid out (USB HID 1.11,
 * section 6.2.3.8). The bits have to be 0 before; a negative value is written in two's complement.
 *
 * @param start index of the first byte after the report id
 */
export function packBits(
  bytes: Uint8Array,
  start: number,
  bitOffset: number,
  bitSize: number,
  value: number,
): void {
  for (let bit = 0; bit < bitSize; bit++) {
    const at = bitOffset + bit;
    bytes[start + (at >> 3)]! |= ((value >> bit) & 1) << (at & 7);
  }
}
