const DIGITS = 9;
/** From here on, and below its inverse, powers of ten are no longer exact. */
const LARGEST = 1e9;
const SMALLEST = 1e-9;

/**
 * A value with nine significant digits, the double next to that decimal number. A tenth digit that is 5 to the last bit
 * may go either way. Several times as quick as through text, which is what most of an import would be spent on.
 */
export function nineDigits(value: number): number {
  const size = Math.abs(value);
  if (Number.isInteger(value) && size < LARGEST) return value;
  if (!(size >= SMALLEST && size < LARGEST)) return Number(value.toPrecision(DIGITS));
  // an exact integer over an exact power of ten is rounded once: the double next to the decimal number
  const scale = 10 ** (DIGITS - 1 - Math.floor(Math.log10(size)));
  return Math.round(value * scale) / scale;
}
