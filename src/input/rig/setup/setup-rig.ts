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
import { KEEPS_NOTHING, resumingKeeper, rigKeeper, type SetupKeeper } from './setup-keeper.ts';
import { setupLoads } from './setup-loads.ts';
import { setupPedal } from './setup-pedal.ts';
import { setupShort } from './setup-short.ts';
import { askWord, type SetupTerminal } from './setup-terminal.ts';
import { setupWheel } from './setup-wheel.ts';

interface SetupOptions {
  readonly source: ReportSource;
  readonly terminal: SetupTerminal;
  /** Null to keep nothing. */
  readonly dataDir: string | null;
  /** What was set up for these devices before, null for new ones. */
  readonly known: Rig | null;
  /** Known loads for the brake's force sensor; empty to leave the fit as it is. */
  readonly loads: readonly NamedLoad[];
  /** `short`: brake, throttle and wheel, one movement each; `buttons`: wheel buttons alone. */
  readonly extent: 'whole' | 'short' | 'buttons';
}

/**
 * Sets up a rig by moving one control after another. Each is saved once it is confirmed, so that stopping loses
 * nothing, and what is known from before can be kept. Left at a question, it goes on there. Closes the source.
 * @throws Problem where answers end, a device fails or the rig file cannot be written.
 */
export async function setupRig(options: SetupOptions): Promise<Rig> {
  const { source, terminal, dataDir, known } = options;
  const tape = new ReportTape(source);
  try {
    const draft = new RigDraft(known);
    sayProposal(terminal, source.devices);
    const keeper = await keeperFor(options, draft);
    const dialogue = new SetupDialogue(terminal, source.devices, tape, draft, keeper);
    await setupExtent(dialogue, options);
    const rig = await dialogue.save();
    await keeper.finish();
    if (dataDir === null) terminal.say('Tried out: nothing was saved.');
    else
      terminal.say(
        `Saved in ${rigFile(dataDir)}. \`ebbline rig check\` shows how well it reports.`,
      );
    return rig;
  } finally {
    tape.stop();
    await source.close();
  }
}

function keeperFor(
  { source, terminal, dataDir, extent }: SetupOptions,
  draft: RigDraft,
): SetupKeeper | Promise<SetupKeeper> {
  if (dataDir === null) return KEEPS_NOTHING;
  if (extent !== 'whole') return rigKeeper(dataDir);
  return resumingKeeper(dataDir, source.devices, draft, (text) => terminal.say(text));
}

async function setupExtent(
  dialogue: SetupDialogue,
  { extent, loads }: SetupOptions,
): Promise<void> {
  if (extent === 'short') return setupShort(dialogue);
  if (extent === 'whole') return setupWhole(dialogue, loads);
  await dialogue.recordRest();
  await setupButtons(dialogue);
}

async function setupWhole(dialogue: SetupDialogue, loads: readonly NamedLoad[]): Promise<void> {
  await dialogue.step('driver', () => askDriver(dialogue));
  await dialogue.recordRest();
  await dialogue.step('brake', () => setupPedal(dialogue, 'brake'));
  if (loads.length > 0) await setupLoads(dialogue, loads);
  await dialogue.step('throttle', () => setupPedal(dialogue, 'throttle'));
  await dialogue.step('clutch', () => setupPedal(dialogue, 'clutch'));
  await dialogue.step('steering', () => setupWheel(dialogue));
  await setupButtons(dialogue);
}

/** What the devices say of themselves, to be confirmed by moving. */
function sayProposal(terminal: SetupTerminal, devices: readonly RigDevice[]): void {
  for (const { name } of devices) terminal.say(`Listening to ${name}.`);
  for (const name of twins(devices))
    terminal.say(`Two devices called ${name} cannot be told apart: only one of them can be used.`);
  const { axes } = proposeRig(devices);
  if (axes.length === 0) return;
  terminal.say('Proposed from what they say of themselves; moving each one confirms it or not:');
  for (const axis of axes) terminal.say(`  ${axis.role.padEnd(9)} ${placeText(axis, devices)}`);
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
