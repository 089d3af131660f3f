import type { RigBatch } from '../trace/rig-batch.ts';
import { advance } from './advance.ts';
import { keyOfButton } from './button-key.ts';
import { followClutch, NO_HOLD } from './clutch-hold.ts';
import type { DrillModel } from './drill-model.ts';
import type { DeviceHealth } from './drill-view.ts';
import { shiftedGear } from './gear.ts';
import { isRepUnderWay, onKey, onPause } from './on-key.ts';
import type { Step } from './stages.ts';

/** What the rig said in one slice of time: the rep goes on, then the wheel's buttons and the clutch are obeyed. */
export function onBatch(model: DrillModel, batch: RigBatch, health: readonly DeviceHealth[]): Step {
  const [advanced, effects] = advance(model, batch);
  const current = {
    ...advanced,
    gear: shiftedGear(advanced.gear, batch.buttons),
    health,
    dropped: batch.dropped,
  };
  const [obeyed, more] = obeyButtons(current, batch);
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
  if (isRepUnderWay(model) || model.menu !== null) return [{ ...model, clutchHold: NO_HOLD }, []];
  const { hold, pause } = followClutch(model.clutchHold, clutch, untilS);
  const held = { ...model, clutchHold: hold };
  return pause ? onPause(held) : [held, []];
}
