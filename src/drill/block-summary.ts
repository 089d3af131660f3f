import { mean } from '../consistency/mean.ts';
import { median } from '../consistency/median.ts';
import type { RepScore } from '../score/rep-score.ts';
import { sharedTroubles } from '../score/trouble/shared-troubles.ts';
import type { Target } from '../target/target.ts';
import type { TextUnits } from '../unit-text.ts';
import { blockAdvice } from './block-advice.ts';
import { blockDiagnosis } from './diagnosis/block-diagnosis.ts';
import type { DiagnosedRep } from './diagnosis/diagnosed-rep.ts';
import type { DoneRep } from './drill-model.ts';
import type { BlockSummary } from './drill-view.ts';
import { spreadOf } from './spread.ts';

/** What the reps of a block on one target came to. */
export function blockSummary(
  done: readonly DoneRep[],
  target: Target,
  units: TextUnits = 'metric',
): BlockSummary {
  return summaryOfReps(
    done.map(({ tag, ...rep }) => ({ ...rep, place: tag.place, feedback: tag.feedback })),
    target,
    units,
  );
}

/** What reps came to, just driven or from the history. The median score counts a rep without braking as 0; errors are of the scored reps. */
export function summaryOfReps(
  reps: readonly DiagnosedRep[],
  target: Target,
  units: TextUnits,
): BlockSummary {
  const outcomes = reps.flatMap(({ outcome }) => outcome ?? []);
  const scores = outcomes.filter((outcome): outcome is RepScore => outcome.kind === 'scored');
  const diagnosis = blockDiagnosis(reps, target);
  const { cause, overlay, aborts } = diagnosis;
  const { from, to } = overlay.grid.release;
  const troubles = sharedTroubles(outcomes, units);
  return {
    reps: outcomes.length,
    aborted: aborts.aborted,
    medianScore: median(outcomes.map(({ score }) => score)),
    medianReleaseErrorLevel: median(scores.map(({ releaseErrorLevel }) => releaseErrorLevel)),
    averageErrorLevel: mean(scores.map(({ averageErrorLevel }) => averageErrorLevel)),
    spreadLevel: spreadOf(overlay.reps.map((curve) => curve.subarray(from, to))),
    cause: cause?.cause ?? null,
    causeReps: cause?.reps ?? 0,
    troubles,
    sentence: blockAdvice(outcomes, troubles),
    diagnosis,
  };
}
