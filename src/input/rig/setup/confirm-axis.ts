import { Problem } from '../../../problem.ts';
import type { AxisAssignment } from '../rig.ts';
import { axisText } from './axis-text.ts';
import { liveAxis } from './live-axis.ts';
import type { SetupDialogue } from './setup-dialogue.ts';
import { ANSWERS, askYes } from './setup-terminal.ts';

/** Shows an axis live and asks whether it follows; false too where its calibration cannot be used. */
export async function confirmAxis(
  { terminal, devices, tape }: SetupDialogue,
  axis: AxisAssignment,
  wheelLockDeg: number | null,
): Promise<boolean> {
  terminal.say(`Found ${axisText(axis, devices)}.`);
  try {
    const live = liveAxis(tape, devices, axis, wheelLockDeg);
    const what = axis.role === 'steering' ? 'hands' : 'foot';
    return await askYes(terminal, `Move it: does this follow your ${what}?`, true, live);
  } catch (error) {
    // An answer that will not come is no matter of this axis.
    if (!(error instanceof Problem) || error.where === ANSWERS) throw error;
    terminal.say(error.message);
    return false;
  }
}
