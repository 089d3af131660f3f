import type { DrillModel } from './drill-model.ts';
import { isRepUnderWay } from './on-key.ts';
import { closeNote } from './on-note.ts';
import { NO_LEVELS } from './recording.ts';
import { enterArming, enterSummary, isBlockOver, type Step } from './stages.ts';
import { voidRep } from './void-rep.ts';
import { lostInRep } from './words.ts';

/** A device is gone: a rep under way is void, and nothing goes on before the device is back. */
export function onDeviceLost(before: DrillModel, name: string): Step {
  if (before.lostDevices.includes(name)) return [before, []];
  const [model, kept] = closeNote(before);
  const [stopped, more] = isRepUnderWay(model) ? voidForLoss(model, name) : [model, []];
  const effects = [...kept, ...more];
  const waiting = {
    ...stopped,
    recording: null,
    lostDevices: [...model.lostDevices, name],
    levels: NO_LEVELS,
  };
  const { kind } = model.stage;
  if (kind === 'summary' || kind === 'paused') return [waiting, effects];
  return [{ ...waiting, stage: { kind: 'device-lost' } }, effects];
}

/** Goes on where it stopped, once every lost device is back. */
export function onDeviceBack(model: DrillModel, name: string): Step {
  const lostDevices = model.lostDevices.filter((lost) => lost !== name);
  const back = { ...model, lostDevices };
  if (lostDevices.length > 0 || model.stage.kind !== 'device-lost') return [back, []];
  const next = isBlockOver(back) ? enterSummary(back, back.atS) : enterArming(back, back.atS);
  return [{ ...next, message: model.message }, []];
}

function voidForLoss(model: DrillModel, name: string): Step {
  const { stage, atS } = model;
  if (!('cueS' in stage)) return [model, []];
  return voidRep(
    model,
    { cueS: stage.cueS, endS: atS },
    { voided: 'device lost', reason: lostInRep(name) },
  );
}
