/** Text as lines of at most `cols` characters, broken between words; a longer word is cut. */
export function wrapped(text: string, cols: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).flatMap((one) => pieces(one, cols))) {
    if (line !== '' && line.length + 1 + word.length > cols) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

function pieces(word: string, cols: number): string[] {
  const characters = [...word];
  const starts = characters.flatMap((_, i) => (i % cols === 0 ? [i] : []));
  return starts.map((start) => characters.slice(start, start + cols).join(''));
}
