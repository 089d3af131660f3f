/** Characters of one line of a page: a note is at most 500, and its place comes behind it. */
export const LONGEST_LINE = 600;
