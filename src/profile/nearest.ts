/** More edits than this share of the word's length make another word, not a slip. */
const LARGEST_SHARE = 0.4;

/**
 * The candidate a mistyped word most likely stands for, null where none is close. A word that only lacks a unit
 * (`duration` for `duration_s`) is close to the one that has it.
 */
export function nearest(word: string, candidates: readonly string[]): string | null {
  const withUnit = candidates.find((candidate) => candidate.startsWith(`${word}_`));
  if (withUnit !== undefined) return withUnit;
  const close = candidates
    .map((candidate) => ({ candidate, edits: editDistance(fold(word), fold(candidate)) }))
    .filter(({ candidate, edits }) => edits <= LARGEST_SHARE * candidate.length)
    .sort((a, b) => a.edits - b.edits);
  return close[0]?.candidate ?? null;
}

/** Case and the choice of separator are no difference worth an edit. Long words are cut, they match nothing. */
function fold(word: string): string {
  return word.slice(0, 64).toLowerCase().replace(/[-\s]/g, '_');
}

/** Insertions, deletions, replacements and swaps of neighbours (optimal string alignment; Damerau 1964). */
export function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = last[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1);
      const swapped =
        i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]
          ? beforeLast[j - 2]! + 1
          : Number.POSITIVE_INFINITY;
      row.push(Math.min(replaced, swapped, last[j]! + 1, row[j - 1]! + 1));
    }
    beforeLast = last;
    last = row;
  }
  return last[to.length]!;
}
