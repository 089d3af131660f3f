import type { BlockReview } from './practice-review.ts';

const PHASES: Readonly<Record<BlockReview['phase'], string>> = {
  'first-of-day': 'first-of-day reps',
  'warm-up': 'warm-up',
  block: 'block',
  'carry-over': 'carry-over check',
};

/** For example `block 2, Kiln hairpin`. */
export function blockTitle({ block, phase, targetName }: BlockReview): string {
  return `${phase === 'block' ? `block ${block}` : PHASES[phase]}, ${targetName}`;
}

/** The same where it begins a line. */
export function blockHeading(review: BlockReview): string {
  const title = blockTitle(review);
  return title.charAt(0).toUpperCase() + title.slice(1);
}
