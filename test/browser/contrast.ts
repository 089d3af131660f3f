/** Red, green and blue of `rgb(1, 2, 3)`, 0..255. */
export function channels(colour: string): readonly [number, number, number] {
  const [r, g, b] = [...colour.matchAll(/[\d.]+/g)].map(([number]) => Number(number));
  return [r!, g!, b!];
}

/** Contrast ratio of two colours (WCAG 2.2, definitions of contrast ratio and relative luminance), 1 to 21. */
export function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}

function luminance(colour: string): number {
  const [r, g, b] = channels(colour).map((channel) => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
