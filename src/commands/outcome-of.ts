import type { ScoreEffect } from '../drill/drill-message.ts';
import type { InPieces } from '../score/in-pieces.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { scoreLiveRepInPieces } from '../score/score-live-rep.ts';
import { scorePacedRep } from '../score/score-paced-rep.ts';
import { scoreRep } from '../score/score-rep.ts';
import type { RepRecord } from '../trace/rep-record.ts';

/** The score of a rep against what it was driven against. */
export function* outcomeOf(
  { target, zone, paced }: Pick<ScoreEffect, 'target' | 'zone' | 'paced'>,
  record: RepRecord,
): InPieces<RepOutcome> {
  if (zone !== null) return yield* scoreLiveRepInPieces(record, zone);
  return paced ? scorePacedRep(record, target) : scoreRep(record, target);
}
