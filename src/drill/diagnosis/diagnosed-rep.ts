import type { RepOutcome, RepScore } from '../../score/rep-score.ts';
import type { Feedback } from '../drill-view.ts';

/** What the diagnosis of a block asks of a rep, whether it was just driven or comes from the history. */
export interface DiagnosedRep {
  /** In its block, from 1. */
  readonly place: number;
  readonly feedback: Feedback;
  readonly voided: 'aborted' | 'device lost' | null;
  /** Null for a void rep. */
  readonly outcome: RepOutcome | null;
  /** By `repCurve`, or with the live car by `liveRepCurve`; null for a rep that was not scored. */
  readonly curve: Float64Array | null;
}

/** A rep that could be measured. */
export interface MeasuredRep extends DiagnosedRep {
  readonly outcome: RepScore;
  readonly curve: Float64Array;
}

export function isMeasured(rep: DiagnosedRep): rep is MeasuredRep {
  return rep.outcome?.kind === 'scored' && rep.curve !== null;
}
