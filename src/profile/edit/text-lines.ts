/** Offset of the first character of the line that holds the offset. */
export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** Offset of the line after the one that holds the offset; behind a line break the offset itself. */
export function lineEnd(text: string, offset: number): number {
  if (offset > 0 && text[offset - 1] === '\n') return offset;
  const at = text.indexOf('\n', offset);
  return at === -1 ? text.length : at + 1;
}

/** What stands on the line in front of the offset. */
export function prefixOf(text: string, offset: number): string {
  return text.slice(lineStart(text, offset), offset);
}

/** The text without an entry between brackets, and without one of the commas beside it. */
export function withoutFlowEntry(text: string, start: number, end: number): string {
  const behind = /^\s*,[ \t]*/.exec(text.slice(end));
  if (behind !== null) return text.slice(0, start) + text.slice(end + behind[0].length);
  const before = /,\s*$/.exec(text.slice(0, start));
  return text.slice(0, start - (before?.[0].length ?? 0)) + text.slice(end);
}
