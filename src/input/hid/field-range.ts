import { type DescriptorItem, signedValue } from './descriptor-item.ts';
import type { GlobalState } from './global-state.ts';

interface Range {
  readonly min: number;
  readonly max: number;
}

/**
 * A range from its two items: the minimum is signed; the maximum is so only below a negative minimum, because devices
 * write 255 in one byte (`15 00 25 FF`). Null where an end was never given.
 */
function signedRange(min: DescriptorItem | null, max: DescriptorItem | null): Range | null {
  if (min === null || max === null) return null;
  const low = signedValue(min);
  return { min: low, max: low < 0 ? signedValue(max) : max.value };
}

/**
 * Logical range of a field, cut to what its bits can hold: ranges of wide axes leak into one-bit buttons. A range that
 * is missing or upside down is replaced by all values of the width.
 */
export function logicalRange(globals: GlobalState, warn: (text: string) => void): Range {
  const declared = signedRange(globals.logicalMin, globals.logicalMax);
  const whole = wholeRange(globals.reportSize, declared !== null && declared.min < 0);
  if (declared === null || declared.max < declared.min) {
    warn(`the logical range ${describe(declared)} cannot be used; all values count as valid`);
    return whole;
  }
  const cut = { min: clamp(declared.min, whole), max: clamp(declared.max, whole) };
  if (cut.min !== declared.min || cut.max !== declared.max)
    warn(
      `the logical range ${describe(declared)} does not fit ${globals.reportSize} bits and is cut`,
    );
  return cut;
}

/** Physical range; the logical one where none was given or both ends are 0 (6.2.2.7). */
export function physicalRange(globals: GlobalState, logical: Range): Range {
  const declared = signedRange(globals.physicalMin, globals.physicalMax);
  return declared === null || (declared.min === 0 && declared.max === 0) ? logical : declared;
}

function wholeRange(bits: number, signed: boolean): Range {
  return signed
    ? { min: -(2 ** (bits - 1)), max: 2 ** (bits - 1) - 1 }
    : { min: 0, max: 2 ** bits - 1 };
}

function clamp(value: number, { min, max }: Range): number {
  return Math.min(max, Math.max(min, value));
}

function describe(range: Range | null): string {
  return range === null ? 'is not given and' : `${range.min}..${range.max}`;
}
