/** Breaks lines that are longer than `width` between words; a line that starts with spaces goes on below its text. */
export function foldLines(text: string, width: number): string {
  return text
    .split('\n')
    .flatMap((line) => foldLine(line, width))
    .join('\n');
}

function foldLine(line: string, width: number): string[] {
  if (line.length <= width) return [line];
  const indent = /^ */.exec(line)![0];
  const lines: string[] = [];
  let current = indent;
  for (const word of line.trim().split(/ +/)) {
    const isFirst = current === indent;
    if (!isFirst && current.length + 1 + word.length > width) {
      lines.push(current);
      current = indent + word;
    } else {
      current += isFirst ? word : ` ${word}`;
    }
  }
  return [...lines, current];
}
