/** A level as percent of full scale, without the sign of a zero. */
export function percentText(level: number, digits = 1): string {
  const text = (100 * level).toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text;
}

/** A ratio as the share by which it is less or more, for example `38 % less`. */
export function shareText(ratio: number): string {
  const percent = Math.round(100 * Math.abs(ratio - 1));
  if (percent === 0) return 'the same';
  return `${percent} % ${ratio < 1 ? 'less' : 'more'}`;
}
