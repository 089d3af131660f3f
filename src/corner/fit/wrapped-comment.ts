const COLS = 100;

/** Words as comment lines of YAML, no longer than a page is wide; what comes from outside cannot end a comment. */
export function commented(text: string, mark: string = ''): string[] {
  const room = COLS - 2 - mark.length;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/[\s\p{Cc}\u2028\u2029]+/u)) {
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((one, i) => `# ${i === 0 ? mark : ' '.repeat(mark.length)}${one}`);
}
