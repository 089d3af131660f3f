/** Breaks a text between words, so that no line is wider than the columns; a longer word is cut. */
export function wrapWords(text: string, columns = 80): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const cut = Array.from(word).slice(0, columns).join('');
    if (last !== undefined && Array.from(last).length + 1 + Array.from(cut).length <= columns)
      lines[lines.length - 1] = `${last} ${cut}`;
    else lines.push(cut);
  }
  return lines;
}
