import { describedField, deviceFields } from '../device-fields.ts';
import { findAxis } from './find-control.ts';
import { keepAxis } from './keep-axis.ts';
import type { SetupDialogue } from './setup-dialogue.ts';
import { confirmWheel, setupWheel, wheelAxis } from './setup-wheel.ts';

const LEFT =
  'Wheel: from straight ahead turn it to the left by a quarter turn or more and back, then press Enter. s and Enter where there is none.';

/**
 * Finds the wheel by one turn to the left, with its stops as the device describes them; a device that describes none
 * is turned to both stops.
 */
export async function setupWheelShort(dialogue: SetupDialogue): Promise<void> {
  if (await keepAxis(dialogue, 'steering')) return;
  for (;;) {
    const outcome = await tryTurn(dialogue);
    if (outcome === 'settled') return;
    if (outcome === 'no stops') return setupWheel(dialogue);
    dialogue.terminal.say('Once more.');
  }
}

/** Share of the described range by which straight ahead may lie beside its middle. */
const OFF_MIDDLE = 0.05;

type Outcome = 'settled' | 'again' | 'no stops';

async function tryTurn(dialogue: SetupDialogue): Promise<Outcome> {
  const { answer, taped } = await dialogue.record(LEFT, 'wheel-left');
  if (/^s(kip)?$/i.test(answer)) return 'settled';
  const others = [...dialogue.moved.values()].map(({ moved }) => moved);
  const found = findAxis(dialogue.devices, { rest: dialogue.rest, moved: taped, others });
  if (found.kind === 'refused') {
    dialogue.terminal.say(found.message);
    return 'again';
  }
  const { device, learned } = found;
  const described = describedField(deviceFields(dialogue.devices[device]!), learned.field);
  if (described === null) {
    dialogue.terminal.say('The device does not say where its stops are.');
    return 'no stops';
  }
  const { logicalMin, logicalMax } = described;
  const middle = (logicalMin + logicalMax) / 2;
  if (Math.abs(learned.restCounts - middle) > OFF_MIDDLE * (logicalMax - logicalMin)) {
    dialogue.terminal.say('Straight ahead is not half way between the stops that it describes.');
    return 'no stops';
  }
  const left = learned.fullCounts < learned.restCounts ? logicalMin : logicalMax;
  const axis = wheelAxis(dialogue, found, left);
  return (await confirmWheel(dialogue, axis)) ? 'settled' : 'again';
}
