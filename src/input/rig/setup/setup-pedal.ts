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

/** Finds a pedal by pressing it, shows that it follows the foot, and saves it. */
export async function setupPedal(dialogue: SetupDialogue, role: PedalRole): Promise<void> {
  if (await keepAxis(dialogue, role)) return;
  while (!(await tryPedal(dialogue, role))) dialogue.terminal.say('Once more.');
}

/** True where the pedal is settled: confirmed and saved, or passed over. */
async function tryPedal(dialogue: SetupDialogue, role: PedalRole): Promise<boolean> {
  const { answer, taped } = await dialogue.record(PRESS[role]);
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
  return confirmPedal(dialogue, role, { ...found, moved: taped });
}

async function confirmPedal(
  dialogue: SetupDialogue,
  role: PedalRole,
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
  const sensor = role === 'brake' ? await askSensor(dialogue) : 'travel';
  dialogue.draft.setAxis(withSensor(shared.axis, sensor, dialogue.draft.axis(role)));
  await dialogue.save();
  return true;
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
