/**
 * A string that a device or file brought, made safe for a terminal, a markup-reading widget and a fixed column:
 * nothing that moves the cursor or turns the text around, no braces, every character one column wide (others become
 * `?`), at most `maxLength` characters.
 */
export function cleanText(text: string, maxLength: number = 48): string {
  // Made where they are used: to make one that knows all letters takes a millisecond of every start.
  // Controls (C0, C1), format characters (bidirectional, zero-width), line separators, marks that combine.
  const invisible = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{M}]/gu;
  // What takes exactly one column everywhere: printable ASCII and the letters of three scripts.
  const notOneColumn = /[^\x20-\x7e\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}]/gu;
  const clean = text
    .slice(0, 1024)
    .normalize('NFKC')
    .replace(invisible, '')
    .replace(/\{/g, '(')
    .replace(/\}/g, ')')
    .replace(notOneColumn, '?')
    .replace(/ {2,}/g, ' ')
    .trim();
  // By whole characters: some letters take two code units.
  return Array.from(clean).slice(0, maxLength).join('').trim();
}
