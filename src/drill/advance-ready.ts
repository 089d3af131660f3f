import { NO_DEVIATION } from '../score/deviation.ts';
import type { DrillModel, OwnTraces } from './drill-model.ts';
import { type OnsetSearch, searchOnset } from './onset-search.ts';
import { appendOwn, type PaceUnderWay, paceFromOnset } from './pace-under-way.ts';
import { type Advance, moveOn, standAt, stay } from './progress.ts';
import { recordedTrack } from './recording.ts';
import { finishRep } from './rep-end.ts';
import { EMPTY_LOG } from './sample-log.ts';

/** No onset for this long after the cue is a rep without braking. */
const NEVER_BRAKED_S = 3;
/** Own trace drawn ahead of the onset. */
const SHOWN_LEAD_S = 0.1;

/** Waits for the onset, from shortly before the cue on. */
export const advanceReady: Advance<'ready'> = (model, stage, batch, cursor) => {
  const { cueS } = stage;
  const giveUpS = cueS + NEVER_BRAKED_S;
  const found = searchOnset(stage.search, batch.brake, cursor, Math.min(batch.untilS, giveUpS));
  const at = (atS: number) => standAt(model, batch, found.cursor, atS);
  if (found.foundAtS !== null)
    return moveOn([braking(at(found.foundAtS), cueS, found.search), []], found.cursor);
  if (batch.untilS < giveUpS) return stay(model, { ...stage, search: found.search }, found.cursor);
  return moveOn(finishRep(at(giveUpS), { cueS, endS: giveUpS }, null), found.cursor);
};

/** The now line leaves: the target's zero is where its own onset, found by the same rule, meets the rep's. */
function braking(model: DrillModel, cueS: number, search: OnsetSearch): DrillModel {
  const onsetS = search.aboveLowS ?? model.atS;
  const originS = onsetS - model.targetOnsetS;
  const pace = paceFromOnset(model, originS);
  const own = ownSoFar(model, onsetS - SHOWN_LEAD_S, originS, pace);
  const offLevel = search.rule.highLevel;
  const fresh = { offSinceS: null, liveError: NO_DEVIATION };
  return { ...model, stage: { kind: 'braking', cueS, originS, offLevel, own, pace, ...fresh } };
}

function ownSoFar(
  { recording, atS }: DrillModel,
  fromS: number,
  originS: number,
  pace: PaceUnderWay | null,
): OwnTraces {
  const log = (axis: 'brake' | 'steering') => {
    if (recording === null) return EMPTY_LOG;
    const track = recordedTrack(recording, axis, fromS, atS);
    return appendOwn(EMPTY_LOG, track, { from: 0, to: track.timeS.length, originS }, pace);
  };
  return { brake: log('brake'), steering: log('steering') };
}
