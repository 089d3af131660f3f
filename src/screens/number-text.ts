/** A level or a difference of levels in per cent with one decimal. */
export function percentText(level: number): string {
  return `${tidy(100 * level, 1)} %`;
}

/** The same with its sign. */
export function signedPercentText(level: number): string {
  const text = percentText(level);
  return text.startsWith('-') || text.startsWith('0.0 ') ? text : `+${text}`;
}

/** A level in whole per cent. */
export function wholePercentText(level: number): string {
  return `${tidy(100 * level, 0)} %`;
}

/** Fixed decimals without a minus before zero. */
export function tidy(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** `1 time`, `2 times`. */
export function countText(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
