/** Width of every picture in its own units, which are pixels on a small phone. */
export const PICTURE_WIDTH = 400;

const NARROW = /[ .,:'|iljtfrI()-]/g;
const WIDE = /[mwMW%]/g;

/** Room that a text takes at the pictures' size in a wide font, so that nothing stands in its way in any other. */
export function textWidth(text: string): number {
  const narrow = text.match(NARROW)?.length ?? 0;
  const wide = text.match(WIDE)?.length ?? 0;
  return 4.9 * narrow + 12 * wide + 7.8 * (text.length - narrow - wide);
}
