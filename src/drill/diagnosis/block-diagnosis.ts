import type { RepOutcome } from '../../score/rep-score.ts';
import type { Target } from '../../target/target.ts';
import { type AbortRate, abortRate } from './abort-rate.ts';
import { type BlockGrid, blockGrid } from './block-grid.ts';
import { BRAKE_PHASES, type BrakePhase } from './brake-phases.ts';
import { type DiagnosedRep, isMeasured } from './diagnosed-rep.ts';
import { type FirstRepLoss, firstRepLoss } from './first-rep-loss.ts';
import { meanCurve, spreadCurve } from './mean-curve.ts';
import { type PhaseCause, phaseCause } from './phase-cause.ts';
import { type PhaseErrors, phaseErrors } from './phase-errors.ts';
import { type ShownHidden, shownHidden } from './shown-hidden.ts';
import { type StartError, startError } from './start-error.ts';
import { type SureCause, sureCause } from './sure-cause.ts';

/** All measured reps of a block over each other, on the grid of their target. */
export interface Overlay {
  readonly grid: BlockGrid;
  /** In the order in which they were driven. */
  readonly reps: readonly Float64Array[];
  /** Null without a rep. */
  readonly mean: Float64Array | null;
  /** Standard deviation between reps at each place; null under three reps. */
  readonly spread: Float64Array | null;
}

export interface PhaseDiagnosis extends PhaseErrors {
  readonly phase: BrakePhase;
  readonly cause: PhaseCause | null;
}

/** What a finished block says about the driver. */
export interface BlockDiagnosis {
  readonly overlay: Overlay;
  readonly phases: readonly PhaseDiagnosis[];
  readonly cause: SureCause | null;
  readonly aborts: AbortRate;
  readonly feedback: ShownHidden;
  readonly firstRep: FirstRepLoss | null;
  readonly start: StartError | null;
}

/**
 * Diagnoses a block of reps of one target.
 *
 * @param reps in any order; void ones included
 * @throws Problem for a target that cannot be scored over time
 */
export function blockDiagnosis(reps: readonly DiagnosedRep[], target: Target): BlockDiagnosis {
  const grid = blockGrid(target);
  const inOrder = reps.toSorted((a, b) => a.place - b.place);
  const measured = inOrder.filter(isMeasured);
  const curves = measured.map(({ curve }) => curve);
  const outcomes: RepOutcome[] = inOrder.flatMap(({ outcome }) => outcome ?? []);
  return {
    overlay: { grid, reps: curves, mean: meanCurve(curves), spread: spreadCurve(curves) },
    phases: BRAKE_PHASES.map((phase) => ({
      phase,
      ...phaseErrors(curves, grid, grid.phases[phase]),
      cause: phaseCause(phase, measured, grid),
    })),
    cause: sureCause(outcomes),
    aborts: abortRate(inOrder),
    feedback: shownHidden(inOrder),
    firstRep: firstRepLoss(inOrder),
    start: startError(inOrder),
  };
}
