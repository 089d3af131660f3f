import { NO_DEVIATION } from '../score/deviation.ts';
import type { DrillModel } from './drill-model.ts';
import {
  ONSET_CONFIRM_S,
  type OnsetSearch,
  onsetRule,
  searchOnset,
  startOnsetSearch,
} from './onset-search.ts';
import { type Advance, moveOn, standAt, stay } from './progress.ts';
import { recordedTrack, startRecording } from './recording.ts';
import { finishRep, voidRep } from './rep-end.ts';
import { appendSamples, EMPTY_LOG } from './sample-log.ts';
import { ARM_S, FOOT_OFF_LEVEL } from './stages.ts';
import { falseStart } from './words.ts';

/** Above this the foot is on the brake again during the countdown. */
const FALSE_START_LEVEL = 0.1;
/** How far ahead of the cue an onset still counts: the driver times it, and times it a little early at times. */
const EARLY_S = 0.2;
/** No onset for this long after the cue is a rep without braking. */
const NEVER_BRAKED_S = 3;
const BASELINE_S = 0.3;
/** Own trace drawn ahead of the onset. */
const SHOWN_LEAD_S = 0.1;

export const advanceArming: Advance<'arming'> = (model, stage, batch, cursor) => {
  const { timeS, value } = batch.brake;
  let off = stage.offSinceS;
  let interrupted = false;
  let i = cursor;
  for (; i < timeS.length; i++) {
    if (off !== null && off + ARM_S <= timeS[i]!) break;
    if (value[i]! > FOOT_OFF_LEVEL) {
      interrupted = true;
      off = null;
    } else off ??= timeS[i]!;
  }
  const fresh = interrupted || off === null || model.recording === null;
  const recorded = fresh
    ? { ...model, recording: startRecording(batch, model.levels, model.atS) }
    : model;
  const armedAtS = (off ?? Number.POSITIVE_INFINITY) + ARM_S;
  if (armedAtS > batch.untilS) return stay(recorded, { kind: 'arming', offSinceS: off }, i);
  const cueS = armedAtS + model.setup.timing.countdownS;
  const armed = standAt(recorded, batch, i, armedAtS);
  return moveOn([{ ...armed, stage: { kind: 'countdown', cueS, pressedSinceS: null } }, []], i);
};

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
  const { atS, targetOnsetS, recording } = model;
  const onsetS = search.aboveLowS ?? atS;
  const originS = onsetS - targetOnsetS;
  const log = (axis: 'brake' | 'steering') => {
    if (recording === null) return EMPTY_LOG;
    const track = recordedTrack(recording, axis, onsetS - SHOWN_LEAD_S, atS);
    return appendSamples(EMPTY_LOG, track, 0, track.timeS.length, originS);
  };
  const own = { brake: log('brake'), steering: log('steering') };
  const offLevel = search.rule.highLevel;
  return {
    ...model,
    stage: {
      kind: 'braking',
      cueS,
      originS,
      offLevel,
      offSinceS: null,
      liveError: NO_DEVIATION,
      own,
    },
  };
}
