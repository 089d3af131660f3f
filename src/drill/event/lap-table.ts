import type { BlockSummary, TargetSummary } from '../drill-view.ts';

/** Heads of the columns of `lapRows`. */
export const LAP_HEADS: readonly string[] = ['corner', 'reps', 'score', 'release error', 'cause'];

/** What laps came to, a row for each corner in the order in which it was driven. */
export function lapRows(summaries: readonly TargetSummary[]): readonly (readonly string[])[] {
  const variant = sharedVariant(summaries.map(({ targetName }) => targetName));
  return summaries.map(({ targetName, summary }) => [
    targetName.slice(0, targetName.length - variant.length),
    ...cells(summary),
  ]);
}

/** The end of all names that says how they are driven, such as `, race`: the session says it already. */
function sharedVariant(names: readonly string[]): string {
  const end = names[0]?.match(/, [^,]+$/)?.[0] ?? '';
  return names.every((name) => name.endsWith(end)) ? end : '';
}

function cells(summary: BlockSummary): readonly string[] {
  const { reps, aborted, medianScore, medianReleaseErrorLevel: error } = summary;
  return [
    aborted === 0 ? String(reps) : `${reps}, ${aborted} aborted`,
    medianScore === null ? '-' : String(Math.round(medianScore)),
    error === null ? '-' : `${(100 * error).toFixed(1)} %`,
    troubleCell(summary),
  ];
}

/** What comes first of all that its reps share. */
function troubleCell({ reps, cause, troubles: [first] }: BlockSummary): string {
  // the column of reps stands beside it, and 80 columns hold no more
  if (first !== undefined) return `${first.words}, ${first.reps} of ${first.of}`;
  if (reps < 3) return 'from three reps on';
  return cause === null ? 'none shared by three' : 'nothing to correct';
}
