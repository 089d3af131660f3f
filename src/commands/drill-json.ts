import type { BlockSummary, RepLine } from '../drill/drill-view.ts';
import type { Target } from '../target/target.ts';
import { outcomeJson } from './score-json.ts';

/** A finished block as `--json` prints it. */
export function drillJson(block: {
  readonly target: Target;
  readonly driver: string;
  readonly practiceId: number | null;
  readonly lines: readonly RepLine[];
  readonly summary: BlockSummary | null;
}): object {
  const { target, summary } = block;
  return {
    target: target.id,
    target_version: target.version,
    driver: block.driver,
    practice: block.practiceId,
    reps: block.lines.map(({ number, feedback, voided, sentence, outcome }) => ({
      rep: number,
      feedback,
      voided,
      sentence,
      outcome: outcome === null ? null : outcomeJson(outcome),
    })),
    block: summary === null ? null : summaryJson(summary),
  };
}

function summaryJson(summary: BlockSummary): object {
  return {
    reps: summary.reps,
    aborted: summary.aborted,
    median_score: summary.medianScore,
    median_release_error_level: summary.medianReleaseErrorLevel,
    average_error_level: summary.averageErrorLevel,
    spread_level: summary.spreadLevel,
    cause: summary.cause?.kind ?? null,
    cause_reps: summary.causeReps,
    sentence: summary.sentence,
  };
}
