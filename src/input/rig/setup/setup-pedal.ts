import type { LearnedAxis } from '../../hid/learn-axis.ts';
import type { AxisAssignment, AxisRole, SensorKind } from '../rig.ts';
import { confirmAxis } from './confirm-axis.ts';
import { findAxis } from './find-control.ts';
import { keepAxis } from './keep-axis.ts';
import type { MovedControl, SetupDialogue } from './setup-dialogue.ts';
import { askWord } from './setup-terminal.ts';
import { shareAxis } from './share-axis.ts';
import { heldExtreme, tapedCounts } from './taped-counts.ts';

type PedalRole = Exclude<AxisRole, 'steering'>;

const PRESS: Readonly<Record<PedalRole, string>> = {
  brake:
    'Brake: press it as hard as 100 % shall be, hold it for a moment and let it go; three times, then press Enter.',
  throttle:
    'Throttle: press it down fully and let it go; three times, then press Enter. s and Enter where there is none.',
  clutch:
    'Clutch: press it down fully and let it go; three times, then press Enter. s and Enter where there is none.',
};

const SENSORS: readonly SensorKind[] = ['force', 'pressure', 'travel', 'unknown'];

/** One press is enough where the first one is confirmed by eye. */
const PRESS_ONCE: Readonly<Record<'brake' | 'throttle', string>> = {
  brake:
    'Brake: press it once, as hard as 100 % shall be, hold it for a moment, let it go, then press Enter.',
  throttle:
    'Throttle: press it once all the way, let it go, then press Enter. s and Enter where there is none.',
};

/** Finds a pedal by pressing it, shows that it follows the foot, and saves it. */
export async function setupPedal(dialogue: SetupDialogue, role: PedalRole): Promise<void> {
  if (await keepAxis(dialogue, role)) {
    if (role === 'brake') await askUnknownSensor(dialogue);
    return;
  }
  const ask = { role, press: PRESS[role], asksSensor: role === 'brake' };
  while (!(await tryPedal(dialogue, ask))) dialogue.terminal.say('Once more.');
}

/** The same in one press and without a question that can wait. */
export async function setupPedalShort(
  dialogue: SetupDialogue,
  role: 'brake' | 'throttle',
): Promise<void> {
  if (await keepAxis(dialogue, role)) return;
  const ask = { role, press: PRESS_ONCE[role], asksSensor: false };
  while (!(await tryPedal(dialogue, ask))) dialogue.terminal.say('Once more.');
}

interface PedalQuestion {
  readonly role: PedalRole;
  readonly press: string;
  /** True to ask what the sensor measures. */
  readonly asksSensor: boolean;
}

/** What a short set-up left open is asked when the pedal is kept. */
async function askUnknownSensor(dialogue: SetupDialogue): Promise<void> {
  const brake = dialogue.draft.axis('brake');
  if (brake === null || brake.calibration.sensor !== 'unknown') return;
  const sensor = await askSensor(dialogue);
  dialogue.draft.setAxis({ ...brake, calibration: { ...brake.calibration, sensor } });
  await dialogue.save();
}

/** True where the pedal is settled: confirmed and saved, or passed over. */
async function tryPedal(dialogue: SetupDialogue, question: PedalQuestion): Promise<boolean> {
  const { role, press } = question;
  const { answer, taped } = await dialogue.record(press, role);
  if (/^s(kip)?$/i.test(answer) && role !== 'brake') {
    dialogue.draft.dropAxis(role);
    return true;
  }
  const others = [...dialogue.moved]
    .filter(([other]) => other !== role)
    .map(([, { moved }]) => moved);
  const found = findAxis(dialogue.devices, { rest: dialogue.rest, moved: taped, others });
  if (found.kind === 'refused') {
    dialogue.terminal.say(found.message);
    return false;
  }
  return confirmPedal(dialogue, question, { ...found, moved: taped });
}

async function confirmPedal(
  dialogue: SetupDialogue,
  { role, asksSensor }: PedalQuestion,
  moved: MovedControl,
): Promise<boolean> {
  const own = pedalAxis(dialogue, role, moved);
  const shared = shareAxis(dialogue, own, moved);
  if (shared.kind === 'refused') {
    dialogue.terminal.say(shared.message);
    return false;
  }
  if (!(await confirmAxis(dialogue, shared.axis, null))) return false;
  dialogue.moved.set(role, moved);
  if (shared.other !== null) dialogue.draft.setAxis(shared.other);
  const sensor = asksSensor ? await askSensor(dialogue) : restSensor(dialogue, role);
  dialogue.draft.setAxis(withSensor(shared.axis, sensor, dialogue.draft.axis(role)));
  await dialogue.save();
  return true;
}

/** What is known where nobody is asked: a pedal other than the brake is measured by its travel. */
function restSensor({ draft }: SetupDialogue, role: PedalRole): SensorKind {
  return role === 'brake' ? (draft.axis('brake')?.calibration.sensor ?? 'unknown') : 'travel';
}

async function askSensor({ terminal, draft }: SetupDialogue): Promise<SensorKind> {
  const known = draft.axis('brake')?.calibration.sensor ?? 'unknown';
  return askWord(terminal, 'What does the brake measure?', SENSORS, known);
}

/** Newtons over counts belong to the sensor, so they outlast a new full scale. */
function withSensor(
  axis: AxisAssignment,
  sensor: SensorKind,
  before: AxisAssignment | null,
): AxisAssignment {
  const isSame = before !== null && placeKey(before) === placeKey(axis);
  const load = isSame && sensor === 'force' ? before.calibration.load : null;
  return { ...axis, calibration: { ...axis.calibration, sensor, load } };
}

function placeKey({ device, field }: AxisAssignment): string {
  return JSON.stringify([device, field]);
}

function pedalAxis(
  { devices }: SetupDialogue,
  role: PedalRole,
  { device, learned, moved }: MovedControl,
): AxisAssignment {
  const fullCounts = heldFull(learned, moved, device);
  return {
    role,
    device: devices[device]!.identity,
    field: learned.field,
    calibration: {
      restCounts: learned.restCounts,
      fullCounts,
      deadStart: 0,
      deadEnd: 0,
      sensor: 'unknown',
      load: null,
    },
  };
}

function heldFull(
  { field, fullCounts, inverted }: LearnedAxis,
  moved: MovedControl['moved'],
  device: number,
): number {
  return heldExtreme(tapedCounts(moved, device, field), inverted ? -1 : 1) ?? fullCounts;
}
