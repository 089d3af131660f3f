import { proposeRig } from '../propose-rig.ts';
import { setupButtonsShort } from './setup-buttons-short.ts';
import type { SetupDialogue } from './setup-dialogue.ts';
import { setupPedalShort } from './setup-pedal.ts';
import { setupWheelShort } from './setup-wheel-short.ts';

/**
 * What is needed to drive, in three movements: brake, throttle, wheel; then buttons for who wants them. What the
 * devices do not have by their own word is not asked for; a device that says nothing of itself may have anything.
 */
export async function setupShort(dialogue: SetupDialogue): Promise<void> {
  const { devices, terminal } = dialogue;
  const roles = new Set(proposeRig(devices).axes.map(({ role }) => role));
  const saysNothing = devices.some(({ descriptor }) => descriptor === null);
  await dialogue.recordRest();
  await setupPedalShort(dialogue, 'brake');
  if (saysNothing || roles.has('throttle')) await setupPedalShort(dialogue, 'throttle');
  if (saysNothing || roles.has('steering')) await setupWheelShort(dialogue);
  await setupButtonsShort(dialogue);
  terminal.say(
    'Ready. Any time: `ebbline rig setup --buttons` learns buttons and paddles, `ebbline rig setup` clutch, footwear and what the brake measures as well.',
  );
}
