import { countText } from '../number-text.ts';

const NOUNS = { practices: 'practice', reps: 'rep', notes: 'note', files: 'file' } as const;

/** For example `2 practices, 40 reps, 1 note`; what there is none of is left out. */
export function countedText(counts: { readonly [K in keyof typeof NOUNS]?: number }): string {
  const parts = (Object.keys(NOUNS) as (keyof typeof NOUNS)[]).flatMap((name) => {
    const count = counts[name] ?? 0;
    return count === 0 ? [] : [countText(count, NOUNS[name])];
  });
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}
