/**
 * The candidate with the fewest edits to `word` (Levenshtein distance), if at most a third of the word is wrong.
 * @returns null where nothing is near
 */
export function nearestWord(word: string, candidates: readonly string[]): string | null {
  let best: { readonly candidate: string; readonly edits: number } | null = null;
  for (const candidate of candidates) {
    const edits = editDistance(word, candidate);
    if (best === null || edits < best.edits) best = { candidate, edits };
  }
  return best !== null && best.edits <= Math.max(1, Math.floor(word.length / 3))
    ? best.candidate
    : null;
}

/** Insertions, deletions and substitutions from `a` to `b`, by the row-wise dynamic programme of Wagner and Fischer. */
export function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 0; i < a.length; i++) {
    const next = [i + 1];
    for (let j = 0; j < b.length; j++) {
      const substitution = (row[j] ?? 0) + (a[i] === b[j] ? 0 : 1);
      next.push(Math.min(substitution, (row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
