import { usageName } from '../../hid/usage-name.ts';
import type { ReportSource } from '../../report-source.ts';
import type { RigDevice } from '../../rig-device.ts';
import type { NamedLoad } from '../parse-load.ts';
import { proposeRig } from '../propose-rig.ts';
import type { Rig } from '../rig.ts';
import { rigFile } from '../rig-file.ts';
import { sameDevice } from '../same-device.ts';
import { placeText } from './axis-text.ts';
import { ReportTape } from './report-tape.ts';
import { RigDraft } from './rig-draft.ts';
import { setupButtons } from './setup-buttons.ts';
import { SetupDialogue } from './setup-dialogue.ts';
import { setupLoads } from './setup-loads.ts';
import { setupPedal } from './setup-pedal.ts';
import { askWord, type SetupTerminal } from './setup-terminal.ts';
import { setupWheel } from './setup-wheel.ts';

export interface SetupOptions {
  readonly source: ReportSource;
  readonly terminal: SetupTerminal;
  readonly dataDir: string;
  /** What was set up for these devices before, null for new ones. */
  readonly known: Rig | null;
  /** Known loads for the brake's force sensor; empty to leave the fit as it is. */
  readonly loads: readonly NamedLoad[];
}

/**
 * Sets up a rig by moving one control after another. Each is saved once it is confirmed, so that stopping loses
 * nothing, and what is known from before can be kept. Closes the source.
 * @throws Problem where answers end, a device fails or the rig file cannot be written.
 */
export async function setupRig(options: SetupOptions): Promise<Rig> {
  const { source, terminal, dataDir, known, loads } = options;
  const tape = new ReportTape(source);
  try {
    const dialogue = new SetupDialogue(
      terminal,
      source.devices,
      tape,
      new RigDraft(known),
      dataDir,
    );
    sayProposal(dialogue);
    await askDriver(dialogue);
    await dialogue.recordRest();
    await setupPedal(dialogue, 'brake');
    if (loads.length > 0) await setupLoads(dialogue, loads);
    await setupPedal(dialogue, 'throttle');
    await setupPedal(dialogue, 'clutch');
    await setupWheel(dialogue);
    await setupButtons(dialogue);
    const rig = await dialogue.save();
    terminal.say(`Saved in ${rigFile(dataDir)}. \`ebbline rig check\` shows how well it reports.`);
    return rig;
  } finally {
    tape.stop();
    await source.close();
  }
}

/** What the devices say of themselves, to be confirmed by moving. */
function sayProposal({ terminal, devices }: SetupDialogue): void {
  for (const { name } of devices) terminal.say(`Listening to ${name}.`);
  for (const name of twins(devices))
    terminal.say(`Two devices called ${name} cannot be told apart: only one of them can be used.`);
  const { axes } = proposeRig(devices);
  if (axes.length === 0) return;
  const guesses = axes.map(
    (axis) =>
      `${axis.role} ${usageName(axis.described.usagePage, axis.described.usageId)} (${placeText(axis, devices)})`,
  );
  terminal.say(`By their own word, not confirmed: ${guesses.join(', ')}.`);
}

/** Names of devices that an earlier one cannot be told from. */
function twins(devices: readonly RigDevice[]): string[] {
  const isLater = ({ identity }: RigDevice, index: number): boolean =>
    devices.slice(0, index).some((earlier) => sameDevice(earlier.identity, identity));
  return devices.filter(isLater).map(({ name }) => name);
}

async function askDriver({ terminal, draft }: SetupDialogue): Promise<void> {
  draft.foot = await askWord(terminal, 'Which foot brakes?', ['left', 'right'], draft.foot);
  const footwear = await terminal.ask(
    `Footwear? It changes the feel, so it is kept with each practice. [${draft.footwear || 'none given'}]`,
  );
  if (footwear !== '') draft.footwear = footwear.slice(0, 60);
}
