import type { DrillModel } from './drill-model.ts';
import { ONSET_CONFIRM_S, onsetRule, startOnsetSearch } from './onset-search.ts';
import { type Advance, moveOn, standAt, stay } from './progress.ts';
import { recordedTrack } from './recording.ts';
import { voidRep } from './void-rep.ts';
import { falseStart } from './words.ts';

/** Above this the foot is on the brake again during the countdown. */
const FALSE_START_LEVEL = 0.1;
/** How far ahead of the cue an onset still counts: the driver times it, and times it a little early at times. */
const EARLY_S = 0.2;
const BASELINE_S = 0.3;

/** Counts down; a press before its last moments is a false start. */
export const advanceCountdown: Advance<'countdown'> = (model, stage, batch, cursor) => {
  const { cueS } = stage;
  const readyS = cueS - EARLY_S;
  const { timeS, value } = batch.brake;
  let pressed = stage.pressedSinceS;
  let i = cursor;
  for (; i < timeS.length && timeS[i]! <= readyS; i++) {
    if (pressed !== null && pressed + ONSET_CONFIRM_S <= timeS[i]!) break;
    pressed = value[i]! > FALSE_START_LEVEL ? (pressed ?? timeS[i]!) : null;
  }
  const certainS = (pressed ?? Number.POSITIVE_INFINITY) + ONSET_CONFIRM_S;
  if (certainS <= Math.min(batch.untilS, readyS)) {
    const reason = falseStart(cueS - certainS);
    const at = standAt(model, batch, i, certainS);
    return moveOn(voidRep(at, { cueS, endS: certainS }, { voided: 'aborted', reason }), i);
  }
  if (batch.untilS < readyS) return stay(model, { ...stage, pressedSinceS: pressed }, i);
  return moveOn([ready(standAt(model, batch, i, readyS), cueS), []], i);
};

/** The baseline is taken from the last moments of the countdown; from here on an onset is a rep. */
function ready(model: DrillModel, cueS: number): DrillModel {
  const { recording, atS, levels } = model;
  const before =
    recording === null ? null : recordedTrack(recording, 'brake', atS - BASELINE_S, atS);
  const rule = onsetRule(before?.value ?? new Float64Array(0));
  return {
    ...model,
    stage: { kind: 'ready', cueS, search: startOnsetSearch(rule, levels.brake, atS) },
  };
}
