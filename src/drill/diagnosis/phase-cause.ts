import { median } from '../../consistency/median.ts';
import { plateauGain } from '../../score/key-indices.ts';
import type { CauseKind, RepScore } from '../../score/rep-score.ts';
import { PEAK_LIMITS, RISE_LIMITS_S } from '../../score/score-version.ts';
import { sharedGroup } from '../../score/shared-group.ts';
import type { BlockGrid } from './block-grid.ts';
import type { BrakePhase } from './brake-phases.ts';
import type { MeasuredRep } from './diagnosed-rep.ts';

/** What was different in one phase. */
interface Difference {
  readonly kind: Exclude<CauseKind, 'shape'>;
  /** Timing and rate in seconds, positive is late and slow; amount as a share, positive is heavy. */
  readonly size: number;
}

/** What at least three reps of a block share in one phase, in kind and direction, with the median of those reps. */
export interface PhaseCause extends Difference {
  readonly reps: number;
  /** Reps that were measured. */
  readonly of: number;
}

/** @returns null unless at least three reps share a difference */
export function phaseCause(
  phase: BrakePhase,
  reps: readonly MeasuredRep[],
  grid: BlockGrid,
): PhaseCause | null {
  const differences = reps.flatMap((rep) => phaseDifference(phase, rep, grid) ?? []);
  const shared = sharedGroup(differences, ({ kind, size }) => `${kind} ${Math.sign(size)}`);
  if (shared === null) return null;
  const size = median(shared.map((each) => each.size))!;
  return { kind: shared[0].kind, size, reps: shared.length, of: reps.length };
}

/**
 * What was different in one phase of one rep: of timing, rate and amount the one that moved the level most on
 * average. Null where none of them moved it by more than the corridor.
 */
function phaseDifference(
  phase: BrakePhase,
  { outcome, curve }: Pick<MeasuredRep, 'outcome' | 'curve'>,
  grid: BlockGrid,
): Difference | null {
  if (phase === 'hit') return hitDifference(outcome);
  const { from, to } = grid.phases[phase];
  const [entryS, exitS] = edgeErrors(phase, outcome);
  if (to - from < 2 || entryS === null || exitS === null) return null;
  const part = { from, to: to - 1 };
  const fallPerS =
    (grid.target[part.from]! - grid.target[part.to]!) / ((part.to - part.from) * grid.stepS);
  const gain = plateauGain(curve, grid.target, grid.plateau.from, grid.plateau.to) ?? 1;
  return largest(
    [
      { kind: 'timing', size: entryS, moves: entryS * fallPerS },
      // later by nothing at the start of the phase and by all of it at its end
      { kind: 'rate', size: exitS - entryS, moves: ((exitS - entryS) * fallPerS) / 2 },
      { kind: 'amount', size: gain - 1, moves: (gain - 1) * meanOf(grid.target, from, to) },
    ],
    meanOf(grid.corridor, from, to),
  );
}

/** The hit is aligned to its onset: it has no timing of its own. */
function hitDifference({ peakError, riseErrorS }: RepScore): Difference | null {
  const inLimits = (value: number, { full, none }: typeof PEAK_LIMITS): number =>
    Math.abs(value) <= full ? 0 : value / none;
  return largest(
    [
      { kind: 'amount', size: peakError, moves: inLimits(peakError, PEAK_LIMITS) },
      { kind: 'rate', size: riseErrorS, moves: inLimits(riseErrorS, RISE_LIMITS_S) },
    ],
    0,
  );
}

function largest(
  found: readonly (Difference & { readonly moves: number })[],
  least: number,
): Difference | null {
  const { kind, size, moves } = found.reduce((a, b) =>
    Math.abs(b.moves) > Math.abs(a.moves) ? b : a,
  );
  return Math.abs(moves) > least ? { kind, size } : null;
}

/** Rep minus target where the phase begins and where it ends, in seconds. */
function edgeErrors(
  phase: Exclude<BrakePhase, 'hit'>,
  { keyPointErrorsS: errors }: RepScore,
): readonly [number | null, number | null] {
  if (phase === '100 to 50 %') return [errors.startOfRelease, errors.halfRelease];
  if (phase === '50 to 10 %') return [errors.halfRelease, errors.finalRelease];
  return [errors.finalRelease, errors.brakeOff];
}

function meanOf(values: Float64Array, from: number, to: number): number {
  return values.subarray(from, to).reduce((sum, value) => sum + value, 0) / (to - from);
}
