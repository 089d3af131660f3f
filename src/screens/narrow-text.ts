// ASCII and Latin-1 without controls and the soft hyphen, two marks of typesetting, and the boxes, blocks and
// triangles that the screens draw with: one cell and one code unit each, and nothing that combines.
const PLAIN = /^[\x20-\x7e\xa1-\xac\xae-\xff\u2019\u2026\u2500-\u25fc]*$/;

/**
 * Text that takes exactly one cell per code point: controls, invisible and combining characters are taken out, and a
 * character two cells wide becomes `?`. It keeps a name from a file or a device from moving the picture.
 */
export function narrowText(text: string): string {
  if (isPlain(text)) return text;
  // Wide by Unicode Standard Annex 11 (East Asian Width W and F) or drawn as an emoji. Made where it is used, like the
  // one below: to make what knows all characters takes half a millisecond of every start.
  const wide =
    /[\u{1100}-\u{115f}\u{2e80}-\u{303e}\u{3041}-\u{a4cf}\u{a960}-\u{a97c}\u{ac00}-\u{d7a3}\u{f900}-\u{faff}\u{fe10}-\u{fe19}\u{fe30}-\u{fe6b}\u{ff01}-\u{ff60}\u{ffe0}-\u{ffe6}\u{16fe0}-\u{18d08}\u{1b000}-\u{1b2fb}\u{1f000}-\u{1faff}\u{20000}-\u{3fffd}\p{Emoji_Presentation}]/gu;
  return text
    .normalize('NFC')
    .replace(/[\p{C}\p{M}\p{Zl}\p{Zp}]/gu, '')
    .replace(wide, '?');
}

/** True where each code unit of the text takes one cell as it is, which nearly all texts of a screen do. */
export function isPlain(text: string): boolean {
  return PLAIN.test(text);
}
