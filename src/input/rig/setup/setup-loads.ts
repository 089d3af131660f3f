import { Problem } from '../../../problem.ts';
import { fitLoads, type KnownLoad } from '../fit-loads.ts';
import { fullScaleNewtons } from '../load-newtons.ts';
import type { NamedLoad } from '../parse-load.ts';
import type { AxisAssignment, LoadFit } from '../rig.ts';
import { sameDevice } from '../same-device.ts';
import type { SetupDialogue } from './setup-dialogue.ts';
import { ANSWERS, askYes } from './setup-terminal.ts';
import { settledCounts, tapedCounts } from './taped-counts.ts';

/**
 * Fits the brake's force sensor to known loads that the driver puts on the pedal, and saves the fit.
 * @throws Problem where the brake does not measure force.
 */
export async function setupLoads(
  dialogue: SetupDialogue,
  loads: readonly NamedLoad[],
): Promise<void> {
  const brake = dialogue.draft.axis('brake');
  if (brake === null || brake.calibration.sensor !== 'force')
    throw new Problem('known loads say nothing of a sensor that does not measure force', {
      where: '--loads',
      next: 'Leave --loads out, or answer that the brake measures force.',
    });
  for (;;) {
    const load = await tryLoads(dialogue, brake, loads);
    if (load !== null) {
      const calibration = { ...brake.calibration, load };
      dialogue.draft.setAxis({ ...brake, calibration });
      dialogue.terminal.say(fitText(load, fullScaleNewtons(calibration)));
      await dialogue.save();
      return;
    }
    if (!(await askYes(dialogue.terminal, 'Measure the loads again?', true))) return;
  }
}

async function tryLoads(
  dialogue: SetupDialogue,
  brake: AxisAssignment,
  loads: readonly NamedLoad[],
): Promise<LoadFit | null> {
  try {
    const known: KnownLoad[] = [];
    for (const load of loads) known.push(await measure(dialogue, brake, load));
    return fitLoads(known);
  } catch (error) {
    if (!(error instanceof Problem) || error.where === ANSWERS) throw error;
    dialogue.terminal.say(`${error.message}. ${error.next}`);
    return null;
  }
}

async function measure(
  dialogue: SetupDialogue,
  { device: identity, field }: AxisAssignment,
  { text, newtons }: NamedLoad,
): Promise<KnownLoad> {
  const { taped } = await dialogue.record(
    newtons === 0
      ? 'Take everything off the brake pedal, let it rest, then press Enter.'
      : `Put ${text} on the brake pedal, let it rest, then press Enter.`,
    'load',
  );
  const device = dialogue.devices.findIndex((one) => sameDevice(one.identity, identity));
  // A device that reports on change says nothing once the load rests: its last word still holds.
  const counts =
    settledCounts(tapedCounts(taped, device, field)) ?? dialogue.tape.latest(device, field);
  if (counts === null)
    throw new Problem('the brake has said nothing yet', {
      where: text,
      next: 'Move it once, then measure again.',
    });
  return { newtons, counts };
}

function fitText({ residualN }: LoadFit, fullN: number | null): string {
  const checked =
    residualN === null
      ? 'two loads leave the line unchecked; a third would tell'
      : `the loads lie ${residualN.toFixed(1)} N off the line (standard deviation)`;
  return `100 % stands for ${(fullN ?? 0).toFixed(0)} N; ${checked}.`;
}
