import { editDistance } from '../profile/nearest.ts';

/** A slip of the keyboard changes no more of a name. */
const LARGEST_SHARE = 0.25;
const MOST_WORDS = 3;

/** A corner that the beginning of a text may have been meant to name. */
interface MeantCorner {
  readonly corner: string;
  /** What stands in its place. */
  readonly said: string;
  /** The text without it; empty for none. */
  readonly rest: string;
}

/**
 * The corner that the first words of a note resemble: its id mistyped, or its name in two or three words. Null where they
 * do not.
 * @param ids of all corners
 */
export function meantCorner(text: string, ids: readonly string[]): MeantCorner | null {
  const words = text.split(/\s+/);
  const [closest] = words
    .slice(0, MOST_WORDS)
    .flatMap((_, last) => ids.map((corner) => ({ corner, count: last + 1 })))
    .map((one) => ({ ...one, edits: editsTo(one.corner, words.slice(0, one.count)) }))
    .filter(({ corner, edits }) => edits <= LARGEST_SHARE * corner.length)
    .sort((a, b) => a.edits - b.edits);
  if (closest === undefined) return null;
  const { corner, count } = closest;
  return { corner, said: words.slice(0, count).join(' '), rest: words.slice(count).join(' ') };
}

function editsTo(corner: string, words: readonly string[]): number {
  // long words are cut, they match nothing
  return editDistance(words.join('-').slice(0, 64).toLowerCase(), corner);
}
