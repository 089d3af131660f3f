/** A line in columns as one that can be read out: commas where columns were parted by blanks. */
export function plainText(line: string): string {
  return line
    .trim()
    .replace(/\brep +(?=\d)/, 'rep ')
    .replace(/\b(score|release|hit|smooth|brake point) +(?=\d)/g, '$1 ')
    .replace(/ {2,}/g, ', ');
}
