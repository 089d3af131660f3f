import type { LearnedAxis } from '../../hid/learn-axis.ts';
import type { AxisAssignment, AxisRole, SensorKind } from '../rig.ts';
import { confirmAxis } from './confirm-axis.ts';
import { findAxis } from './find-control.ts';
import { keepAxis } from './keep-axis.ts';
import { askWord } from './setup-console.ts';
import type { MovedControl, SetupSession } from './setup-session.ts';
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
export async function setupPedal(session: SetupSession, role: PedalRole): Promise<void> {
  if (await keepAxis(session, role)) return;
  while (!(await tryPedal(session, role))) session.console.say('Once more.');
}

/** True where the pedal is settled: confirmed and saved, or passed over. */
async function tryPedal(session: SetupSession, role: PedalRole): Promise<boolean> {
  const { answer, taped } = await session.record(PRESS[role]);
  if (/^s(kip)?$/i.test(answer) && role !== 'brake') {
    session.draft.dropAxis(role);
    return true;
  }
  const others = [...session.moved]
    .filter(([other]) => other !== role)
    .map(([, { moved }]) => moved);
  const found = findAxis(session.devices, { rest: session.rest, moved: taped, others });
  if (found.kind === 'refused') {
    session.console.say(found.message);
    return false;
  }
  return confirmPedal(session, role, { ...found, moved: taped });
}

async function confirmPedal(
  session: SetupSession,
  role: PedalRole,
  moved: MovedControl,
): Promise<boolean> {
  const own = pedalAxis(session, role, moved);
  const shared = shareAxis(session, own, moved);
  if (shared.kind === 'refused') {
    session.console.say(shared.message);
    return false;
  }
  if (!(await confirmAxis(session, shared.axis, null))) return false;
  session.moved.set(role, moved);
  if (shared.other !== null) session.draft.setAxis(shared.other);
  const sensor = role === 'brake' ? await askSensor(session) : 'travel';
  session.draft.setAxis(withSensor(shared.axis, sensor, session.draft.axis(role)));
  await session.save();
  return true;
}

async function askSensor({ console, draft }: SetupSession): Promise<SensorKind> {
  const known = draft.axis('brake')?.calibration.sensor ?? 'unknown';
  return askWord(console, 'What does the brake measure?', SENSORS, known);
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
  { devices }: SetupSession,
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
