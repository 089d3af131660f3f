import { enterRolling } from './live/advance-rolling.ts';
import { type Advance, moveOn, standAt, stay } from './progress.ts';
import { startRecording } from './recording.ts';
import { ARM_S, FOOT_OFF_LEVEL } from './stages.ts';

/** Waits until the foot has been off the brake for a moment; what was recorded before is of no use and let go. */
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
  const armed = standAt(recorded, batch, i, armedAtS);
  if (armed.live !== null) return moveOn([enterRolling(armed, armed.live.zone), []], i);
  const cueS = armedAtS + model.setup.timing.countdownS;
  return moveOn([{ ...armed, stage: { kind: 'countdown', cueS, pressedSinceS: null } }, []], i);
};
