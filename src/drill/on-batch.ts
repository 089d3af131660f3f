import type { RigBatch } from '../trace/rig-batch.ts';
import { advance } from './advance.ts';
import { keyOfButton } from './button-key.ts';
import { followClutch, NO_HOLD } from './clutch-hold.ts';
import type { ClutchHold, DrillModel } from './drill-model.ts';
import type { DeviceHealth } from './drill-view.ts';
import { isRepUnderWay, onKey, onPause } from './on-key.ts';
import type { Step } from './stages.ts';
import { inTargetLevels, levelPerShare } from './target-force.ts';

/** What the rig said in one slice of time: the rep goes on, then the wheel's buttons and the clutch are obeyed. */
export function onBatch(model: DrillModel, batch: RigBatch, health: readonly DeviceHealth[]): Step {
  const perShare = levelPerShare(model.setup);
  const [advanced, effects] = advance(model, inTargetLevels(batch, perShare), health);
  const [obeyed, more] = obeyButtons(advanced, batch);
  const [paused, last] = obeyClutch(obeyed, batch);
  return [paused, [...effects, ...more, ...last]];
}

function obeyButtons(model: DrillModel, { buttons }: RigBatch): Step {
  return buttons
    .filter(({ pressed }) => pressed)
    .reduce<Step>(
      ([now, effects], { action }) => {
        const key = keyOfButton(now, action);
        if (key === null) return [now, effects];
        const [next, more] = onKey(now, key);
        return [next, [...effects, ...more]];
      },
      [model, []],
    );
}

/** A clutch held for two seconds between reps pauses; during a rep it is part of the driving. */
function obeyClutch(model: DrillModel, { clutch, untilS }: RigBatch): Step {
  if (isRepUnderWay(model) || model.menu !== null) return [holding(model, NO_HOLD), []];
  const { hold, pause } = followClutch(model.clutchHold, clutch, untilS);
  const held = holding(model, hold);
  return pause ? onPause(held) : [held, []];
}

function holding(model: DrillModel, hold: ClutchHold): DrillModel {
  const { sinceS, spent } = model.clutchHold;
  return sinceS === hold.sinceS && spent === hold.spent ? model : { ...model, clutchHold: hold };
}
