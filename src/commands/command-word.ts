/** A text as one word of a command line that can be typed. */
export function commandWord(text: string): string {
  return /^[\w.,:/~-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`;
}
