import type { AxisRole } from '../rig.ts';
import { sameDevice } from '../same-device.ts';
import { axisText } from './axis-text.ts';
import { askYes } from './setup-console.ts';
import type { SetupSession } from './setup-session.ts';

/** Whether the driver keeps an axis as it was set up before; one whose device is not here is always kept. */
export async function keepAxis(session: SetupSession, role: AxisRole): Promise<boolean> {
  const { console, devices, draft } = session;
  const known = draft.axis(role);
  if (known === null) return false;
  const text = `${role}: ${axisText(known, devices)}`;
  const isHere = devices.some(({ identity }) => sameDevice(identity, known.device));
  if (isHere) return askYes(console, `${text}. Keep it?`, true);
  // A brake that is not here cannot be driven; the pedals that are shall get a rig of their own.
  if (role === 'brake') return false;
  console.say(`${text}: kept.`);
  return true;
}
