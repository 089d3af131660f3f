import type { AxisRole } from '../rig.ts';
import { sameDevice } from '../same-device.ts';
import { axisText } from './axis-text.ts';
import type { SetupDialogue } from './setup-dialogue.ts';
import { askYes } from './setup-terminal.ts';

/** Whether the driver keeps an axis as it was set up before; one whose device is not here is always kept. */
export async function keepAxis(dialogue: SetupDialogue, role: AxisRole): Promise<boolean> {
  const { terminal, devices, draft } = dialogue;
  const known = draft.axis(role);
  if (known === null) return false;
  const text = `${role}: ${axisText(known, devices)}`;
  const isHere = devices.some(({ identity }) => sameDevice(identity, known.device));
  if (isHere) return askYes(terminal, `${text}. Keep it?`, true);
  // A brake that is not here cannot be driven; the pedals that are shall get a rig of their own.
  if (role === 'brake') return false;
  terminal.say(`${text}: kept.`);
  return true;
}
