import { diagnosisJson } from '../drill/diagnosis/diagnosis-json.ts';
import type { DrillSetup } from '../drill/drill-setup.ts';
import type { BlockSummary, RepLine } from '../drill/drill-view.ts';
import type { PlannedPractice } from '../drill/plan/planned-practice.ts';
import { troubleJson } from '../score/trouble/trouble-json.ts';
import type { ToldBlock, ToldRep } from './drill-told.ts';
import { outcomeJson } from './score-json.ts';

/** What was drilled, and whose reps they are. */
export interface DrilledBy {
  readonly setup: Pick<DrillSetup, 'target' | 'live' | 'plan'>;
  readonly driver: string;
  readonly practiceId: number | null;
}

/** A finished block as `--json` prints it. */
export function drillJson(
  block: DrilledBy & {
    readonly lines: readonly RepLine[];
    readonly summary: BlockSummary | null;
  },
): object {
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
    reps: block.lines.map(lineJson),
    block: summary === null ? null : summaryJson(summary),
  };
}

/** A planned practice as `--json` prints it, block by block. */
export function planDrillJson(
  reps: readonly ToldRep[],
  summaries: readonly ToldBlock[],
  { driver, practiceId }: DrilledBy,
  { name, blocks }: PlannedPractice,
): object {
  return {
    plan: name,
    driver,
    practice: practiceId,
    blocks: summaries.map(({ plan }, i) => ({
      block: i + 1,
      phase: blocks[i]!.phase,
      order: blocks[i]!.order,
      reps: reps
        .filter(({ rep }) => rep.tag.block === i + 1)
        .map(({ line, rep }) => ({ target: rep.gridTarget.id, ...lineJson(line) })),
      targets: (plan?.summaries ?? []).map(({ targetName, summary }) => ({
        name: targetName,
        ...summaryJson(summary),
      })),
      notes: plan?.notes ?? [],
    })),
  };
}

function lineJson(line: RepLine): object {
  const { number, feedback, voided, call, sentence, warning, outcome } = line;
  return {
    rep: number,
    feedback,
    voided,
    call,
    sentence,
    warning,
    outcome: outcome === null ? null : outcomeJson(outcome),
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
    troubles: summary.troubles.map(troubleJson),
    sentence: summary.sentence,
    diagnosis: diagnosisJson(summary.diagnosis),
  };
}
