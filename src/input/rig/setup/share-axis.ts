import { combinedAxis } from '../../hid/combined-axis.ts';
import type { Refusal, Reports } from '../../hid/control-recording.ts';
import type { FieldLocation } from '../../hid/report-field.ts';
import type { AxisAssignment, AxisRole } from '../rig.ts';
import { sameDevice } from '../same-device.ts';
import type { Taped } from './report-tape.ts';
import type { MovedControl, SetupDialogue } from './setup-dialogue.ts';

/** An axis, with the pedal it shares its field with put right as well. */
interface SharedAxis {
  readonly kind: 'shared';
  readonly axis: AxisAssignment;
  /** The other pedal's new assignment; null where the axis has a field of its own. */
  readonly other: AxisAssignment | null;
}

/**
 * Finds out whether a newly moved pedal sits on the field of another one: then both rest in the middle and go opposite
 * ways, and neither alone showed the whole field. Refused where it is the other pedal itself.
 */
export function shareAxis(
  dialogue: SetupDialogue,
  axis: AxisAssignment,
  moved: MovedControl,
): SharedAxis | Refusal {
  for (const role of ['brake', 'throttle', 'clutch'] as const) {
    const other = dialogue.draft.axis(role);
    if (role === axis.role || other === null || !sameDevice(other.device, axis.device)) continue;
    const before = dialogue.moved.get(role);
    const shared =
      before === undefined
        ? besideKnown(dialogue, axis, other)
        : besideMoved(dialogue, axis, moved, other, before);
    if (shared !== null) return shared;
  }
  return { kind: 'shared', axis, other: null };
}

/** Beside a pedal that was moved in this dialogue: the bits of both movements are put together. */
function besideMoved(
  { rest, terminal }: SetupDialogue,
  axis: AxisAssignment,
  moved: MovedControl,
  other: AxisAssignment,
  before: MovedControl,
): SharedAxis | Refusal | null {
  const own = (taped: Taped): Reports =>
    taped.filter(({ device }) => device === moved.device).map(({ bytes }) => bytes);
  const found = combinedAxis(
    { axis: before.learned, moved: own(before.moved) },
    { axis: moved.learned, moved: own(moved.moved) },
    own(rest),
  );
  if (found === null || found.kind === 'refused') return found;
  const { field, restCounts, firstFullCounts, secondFullCounts } = found;
  terminal.say(cancelText(axis.role, other.role));
  return {
    kind: 'shared',
    axis: onField(axis, field, restCounts, secondFullCounts),
    other: onField(other, field, restCounts, firstFullCounts),
  };
}

/** Beside a pedal kept from before, of which only the calibration is known. */
function besideKnown(
  { terminal }: SetupDialogue,
  axis: AxisAssignment,
  other: AxisAssignment,
): SharedAxis | Refusal | null {
  if (!sameBits(axis.field, other.field)) return null;
  const [own, theirs] = [axis, other].map(
    ({ calibration }) => calibration.fullCounts - calibration.restCounts,
  ) as [number, number];
  if (own * theirs < 0) {
    terminal.say(cancelText(axis.role, other.role));
    return { kind: 'shared', axis, other: null };
  }
  return {
    kind: 'refused',
    reason: 'same-control',
    message: `That is the ${other.role}. Press the ${axis.role} alone.`,
    moved: [axis.field],
  };
}

function onField(
  axis: AxisAssignment,
  field: FieldLocation,
  restCounts: number,
  fullCounts: number,
): AxisAssignment {
  return { ...axis, field, calibration: { ...axis.calibration, restCounts, fullCounts } };
}

function sameBits(a: FieldLocation, b: FieldLocation): boolean {
  return a.reportId === b.reportId && a.bitOffset === b.bitOffset && a.bitSize === b.bitSize;
}

function cancelText(one: AxisRole, other: AxisRole): string {
  return `The ${one} and the ${other} share one axis: pressed together they cancel out. Separate axes are better, where the pedals can be switched to them.`;
}
