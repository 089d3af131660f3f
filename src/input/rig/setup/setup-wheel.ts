import type { LearnedAxis } from '../../hid/learn-axis.ts';
import type { AxisAssignment } from '../rig.ts';
import { confirmAxis } from './confirm-axis.ts';
import { type FoundControl, findAxis } from './find-control.ts';
import { keepAxis } from './keep-axis.ts';
import type { Taped } from './report-tape.ts';
import type { SetupDialogue } from './setup-dialogue.ts';
import { heldExtreme, tapedCounts } from './taped-counts.ts';

const STRAIGHT =
  'Wheel: hold it straight ahead, then press Enter. s and Enter where there is none.';
const LEFT = 'Turn it slowly to the left stop and back to straight ahead, then press Enter.';
const RIGHT = 'The same to the right stop and back, then press Enter.';

const DEFAULT_LOCK_DEG = 900;
/** Ten turns. */
const LARGEST_LOCK_DEG = 3600;
/** Stops further apart than this from the middle make straight ahead doubtful. */
const UNEVEN = 0.1;

/** Finds the wheel by turning it, asks for its lock, shows that it follows the hands, and saves it. */
export async function setupWheel(dialogue: SetupDialogue): Promise<void> {
  if (await keepAxis(dialogue, 'steering')) return;
  while (!(await tryWheel(dialogue))) dialogue.terminal.say('Once more.');
}

async function tryWheel(dialogue: SetupDialogue): Promise<boolean> {
  const straight = await dialogue.record(STRAIGHT, 'wheel-straight');
  if (/^s(kip)?$/i.test(straight.answer)) {
    dialogue.draft.dropAxis('steering');
    dialogue.draft.wheelLockDeg = null;
    return true;
  }
  const left = await dialogue.record(LEFT, 'wheel-left');
  const others = [...dialogue.moved.values()].map(({ moved }) => moved);
  const found = findAxis(dialogue.devices, { rest: straight.taped, moved: left.taped, others });
  if (found.kind === 'refused') {
    dialogue.terminal.say(found.message);
    return false;
  }
  const right = await dialogue.record(RIGHT, 'wheel-right');
  const stops = stopsOf(found, left.taped, right.taped);
  const oddity = unevenText(found.learned.restCounts, stops);
  if (oddity === null) return confirmWheel(dialogue, wheelAxis(dialogue, found, stops.left));
  dialogue.terminal.say(oddity);
  return false;
}

interface Stops {
  readonly left: number;
  /** Null where the wheel was not heard. */
  readonly right: number | null;
}

function stopsOf({ device, learned }: FoundControl<LearnedAxis>, left: Taped, right: Taped): Stops {
  const towardsLeft = learned.inverted ? -1 : 1;
  const stop = (taped: Taped, towards: 1 | -1): number | null =>
    heldExtreme(tapedCounts(taped, device, learned.field), towards);
  return {
    left: stop(left, towardsLeft) ?? learned.fullCounts,
    right: stop(right, towardsLeft === 1 ? -1 : 1),
  };
}

export function wheelAxis(
  { devices }: SetupDialogue,
  { device, learned }: Pick<FoundControl<LearnedAxis>, 'device' | 'learned'>,
  leftCounts: number,
): AxisAssignment {
  return {
    role: 'steering',
    device: devices[device]!.identity,
    field: learned.field,
    calibration: {
      restCounts: learned.restCounts,
      fullCounts: leftCounts,
      deadStart: 0,
      deadEnd: 0,
      sensor: 'unknown',
      load: null,
    },
  };
}

/** What is wrong with the two stops, or null. */
function unevenText(rest: number, { left, right }: Stops): string | null {
  const [toLeft, toRight] = [left - rest, right === null ? 0 : right - rest];
  if (toLeft * toRight >= 0) return 'The wheel did not turn the other way. Keep to the asked side.';
  const uneven = Math.abs(Math.abs(toLeft) - Math.abs(toRight)) / Math.abs(toLeft - toRight);
  return uneven > UNEVEN
    ? 'Straight ahead is not half way between the stops. Turn to both stops, and hold the wheel straight at rest.'
    : null;
}

/** Asks for the lock, shows the wheel live and saves it; false where it does not follow the hands. */
export async function confirmWheel(
  dialogue: SetupDialogue,
  axis: AxisAssignment,
): Promise<boolean> {
  const wheelLockDeg = await askLock(dialogue);
  if (!(await confirmAxis(dialogue, axis, wheelLockDeg))) return false;
  dialogue.draft.wheelLockDeg = wheelLockDeg;
  dialogue.draft.setAxis(axis);
  await dialogue.save();
  return true;
}

async function askLock({ terminal, draft }: SetupDialogue): Promise<number> {
  const known = draft.wheelLockDeg ?? DEFAULT_LOCK_DEG;
  for (;;) {
    const answer = await terminal.ask(`How many degrees from stop to stop? [${known}]`);
    const lockDeg = answer === '' ? known : Number(answer);
    if (lockDeg > 0 && lockDeg <= LARGEST_LOCK_DEG) return lockDeg;
    terminal.say(`Give degrees up to ${LARGEST_LOCK_DEG}, for example 540 or 900.`);
  }
}
