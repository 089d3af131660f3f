/** Fixed decimals, and never a minus in front of nothing. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** The same with a plus in front of what is more than nothing. */
export function signed(value: number, decimals: number): string {
  const text = fixed(value, decimals);
  return Number(text) > 0 ? `+${text}` : text;
}

/** A share as per cent, for example `12 %`. */
export function percentText(share: number, decimals = 0): string {
  return `${fixed(100 * share, decimals)} %`;
}

/** A level in per cent with one decimal, without the unit: for a column or a sentence that says it once. */
export function tenths(level: number): string {
  return fixed(100 * level, 1);
}

/** The same with its sign. */
export function signedTenths(level: number): string {
  return signed(100 * level, 1);
}

/** `1 time`, `2 times`. */
export function countText(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
