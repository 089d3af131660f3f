import type { DrillSetup } from '../drill/drill-setup.ts';
import { LEAD_S } from '../drill/recording.ts';
import { madeUpRep } from '../drill/rehearsal/made-up-rep.ts';
import { squeezedTarget } from '../drill/rehearsal/squeezed-target.ts';
import { encodeRecord } from '../history/codec/encode-record.ts';
import type { InPieces } from '../score/in-pieces.ts';
import { rehearsedParts } from '../score/rehearsed-parts.ts';
import { quantiseRecord } from '../trace/quantise-record.ts';
import { outcomeOf } from './outcome-of.ts';
import { zonedNow } from './zoned-now.ts';

/** Shares of the target's time: what the engine has never run it runs slowly, so the first rehearsals are short. */
const SHARES = [0.05, 0.1, 0.3, 1];
/** After brake off, so that the release is seen to its end. */
const TAIL_S = 0.6;

/**
 * Does what a finished rep takes on reps that nobody drove, and keeps nothing of it: the first time takes several times
 * as long as those after it, and the end of a first rep would be seen to stop the picture.
 */
export function* rehearseRep(setup: DrillSetup): InPieces<void> {
  // The first picture comes in this turn.
  yield;
  zonedNow();
  yield;
  yield* rehearsedParts();
  for (const share of SHARES) yield* rehearseShare(setup, share);
}

function* rehearseShare(setup: DrillSetup, share: number): InPieces<void> {
  const target = squeezedTarget(setup.target, share);
  const span = { fromS: -LEAD_S, toS: target.marks.brakeOff + TAIL_S };
  const record = quantiseRecord(madeUpRep(target, span, setup));
  yield;
  yield* outcomeOf({ target, zone: null, paced: false }, record);
  yield;
  encodeRecord(record);
  yield;
}
