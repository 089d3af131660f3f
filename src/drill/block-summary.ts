import { median } from '../consistency/median.ts';
import { dominantCause } from '../score/dominant-cause.ts';
import type { RepScore } from '../score/rep-score.ts';
import { blockAdvice } from './block-advice.ts';
import type { DoneRep } from './drill-model.ts';
import type { BlockSummary } from './drill-view.ts';
import { spreadOf } from './spread.ts';

/** What a block came to. The median score counts a rep without braking as 0; errors are of the scored reps. */
export function blockSummary(done: readonly DoneRep[]): BlockSummary {
  const outcomes = done.flatMap(({ outcome }) => outcome ?? []);
  const scores = outcomes.filter((outcome): outcome is RepScore => outcome.kind === 'scored');
  const shared = dominantCause(outcomes);
  return {
    reps: outcomes.length,
    aborted: done.filter(({ voided }) => voided === 'aborted').length,
    medianScore: median(outcomes.map(({ score }) => score)),
    medianReleaseErrorLevel: median(scores.map(({ releaseErrorLevel }) => releaseErrorLevel)),
    averageErrorLevel: mean(scores.map(({ averageErrorLevel }) => averageErrorLevel)),
    spreadLevel: spreadOf(done.flatMap(({ release }) => release ?? [])),
    cause: shared?.cause ?? null,
    causeReps: shared?.reps ?? 0,
    sentence: blockAdvice(shared?.cause ?? null, scores.length),
  };
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, x) => sum + x, 0) / values.length;
}
