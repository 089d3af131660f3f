import { plateauGain } from '../../score/key-indices.ts';
import type { RepScore, ScoreFlag } from '../../score/rep-score.ts';
import { scoreRep } from '../../score/score-rep.ts';
import type { Target } from '../../target/target.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import { blockGrid } from '../diagnosis/block-grid.ts';
import { repCurve } from '../diagnosis/rep-curve.ts';

/** A record with what it is called: the number of a logged zone, or the id of a rep. */
export interface NumberedRecord {
  readonly number: number;
  readonly record: RepRecord;
}

/** A braking on the grid of the target, by the drill's own ruler. */
export interface ComparedRep {
  readonly number: number;
  readonly outcome: RepScore;
  readonly curve: Float64Array;
  /** How heavy its plateau was, as a factor on the target's. */
  readonly gain: number;
}

/** A braking that cannot be compared, and why. */
export interface UncomparedRep {
  readonly number: number;
  readonly reason: string;
}

const REASONS: Readonly<Partial<Record<ScoreFlag, string>>> = {
  gap: 'a gap in the recording',
  double: 'off the brake and on it again',
  'not-released': 'never off the brake',
};

/** @throws Problem for a target that is not over time */
export function comparedRep(
  { number, record }: NumberedRecord,
  target: Target,
): ComparedRep | UncomparedRep {
  const outcome = scoreRep(record, target);
  if (outcome.kind === 'no-rep') return { number, reason: outcome.reason };
  const flag = outcome.flags.find((one) => REASONS[one] !== undefined);
  if (flag !== undefined) return { number, reason: REASONS[flag]! };
  const grid = blockGrid(target);
  const curve = repCurve(record.brake, outcome, grid);
  const { from, to } = grid.plateau;
  const gain = plateauGain(curve, grid.target, from, to) ?? 1 + outcome.peakError;
  return { number, outcome, curve, gain };
}
