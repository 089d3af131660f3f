const PLUS = 43;
const MINUS = 45;
const ZERO = 48;
/** Whole numbers up to here and powers of ten up to 22 are exact, so one division rounds correctly (Clinger, 1990). */
const MOST_MANTISSA = 2 ** 53;
const POWERS: readonly number[] = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

/**
 * The number in `bytes[from, to)`, NaN for anything else (an empty cell, a word). Nothing is allocated for plain
 * decimal numbers; exponents and very long ones take the slow way.
 *
 * @param decimal byte of the decimal sign
 */
export function parseNumber(bytes: Uint8Array, from: number, to: number, decimal: number): number {
  let i = from;
  const sign = bytes[i];
  if (sign === MINUS || sign === PLUS) i++;
  let mantissa = 0;
  let decimals = -1;
  let digits = 0;
  for (; i < to; i++) {
    const digit = bytes[i]! - ZERO;
    if (digit >= 0 && digit <= 9) {
      mantissa = mantissa * 10 + digit;
      digits++;
      if (decimals >= 0) decimals++;
    } else if (bytes[i] === decimal && decimals < 0) decimals = 0;
    else return slowNumber(bytes, from, to, decimal);
  }
  if (digits === 0) return Number.NaN;
  if (mantissa > MOST_MANTISSA || decimals > 22) return slowNumber(bytes, from, to, decimal);
  const size = decimals > 0 ? mantissa / POWERS[decimals]! : mantissa;
  return sign === MINUS ? -size : size;
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

function slowNumber(bytes: Uint8Array, from: number, to: number, decimal: number): number {
  let text = '';
  for (let i = from; i < to; i++) text += String.fromCharCode(bytes[i]!);
  if (decimal === 44) {
    if (text.includes('.')) return Number.NaN;
    text = text.replace(',', '.');
  }
  return NUMBER.test(text) ? Number(text) : Number.NaN;
}
