import { diagnosisJson } from '../drill/diagnosis/diagnosis-json.ts';
import type { DrillSetup } from '../drill/drill-setup.ts';
import type { BlockSummary, RepLine } from '../drill/drill-view.ts';
import { outcomeJson } from './score-json.ts';

/** A finished block as `--json` prints it. */
export function drillJson(block: {
  readonly setup: Pick<DrillSetup, 'target' | 'live'>;
  readonly driver: string;
  readonly practiceId: number | null;
  readonly lines: readonly RepLine[];
  readonly summary: BlockSummary | null;
}): object {
  const { summary } = block;
  const { target, live } = block.setup;
  return {
    target: target.id,
    target_version: target.version,
    car: live?.car.id ?? null,
    corner: live?.sheet.id ?? null,
    variant: live?.variant ?? null,
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
    diagnosis: diagnosisJson(summary.diagnosis),
  };
}
