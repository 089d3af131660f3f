import type { FieldLocation, ReportField } from '../hid/report-field.ts';
import type { DeviceIdentity, RigDevice } from '../rig-device.ts';
import { deviceFields } from './device-fields.ts';
import type { AxisAssignment, AxisCalibration, AxisRole } from './rig.ts';
import { SMALLEST_SPAN_COUNTS } from './share-of-span.ts';
import { usageRank } from './usage-rank.ts';

/** A guess from what the devices say of themselves; only pressing the pedal confirms it. */
interface ProposedAxis extends AxisAssignment {
  readonly status: 'unconfirmed';
  /** The field as described, for its usage's name. */
  readonly described: ReportField;
}

interface RigProposal {
  /** At most one per role, in the order brake, steering, throttle, clutch. */
  readonly axes: readonly ProposedAxis[];
}

interface Candidate {
  readonly device: DeviceIdentity;
  readonly field: ReportField;
}

/** The brake chooses first: it is what the rig is for. */
const ROLES: readonly AxisRole[] = ['brake', 'steering', 'throttle', 'clutch'];

/**
 * Guesses which axis is which from the usages in the report descriptors, with the described ranges as calibration:
 * pedals rest at the minimum, the wheel in the middle with its left stop at the minimum (HID Usage Tables, 4.2: X grows
 * from left to right). Empty for devices without a descriptor.
 */
export function proposeRig(devices: readonly RigDevice[]): RigProposal {
  const candidates = devices.flatMap((device) =>
    deviceFields(device)
      .filter(isAxis)
      .map((field) => ({ device: device.identity, field })),
  );
  const taken = new Set<Candidate>();
  const axes = ROLES.flatMap((role) => {
    const best = bestFor(
      role,
      candidates.filter((candidate) => !taken.has(candidate)),
    );
    if (best === null) return [];
    taken.add(best);
    return [proposal(role, best)];
  });
  return { axes };
}

function isAxis(field: ReportField): boolean {
  return (
    field.variable && !field.relative && field.logicalMax - field.logicalMin >= SMALLEST_SPAN_COUNTS
  );
}

/** The lowest rank wins, the first device among equals. */
function bestFor(role: AxisRole, candidates: readonly Candidate[]): Candidate | null {
  const ranked = candidates
    .map((candidate) => ({ candidate, rank: usageRank(role, candidate.field) }))
    .filter((entry): entry is { candidate: Candidate; rank: number } => entry.rank !== null)
    .sort((a, b) => a.rank - b.rank);
  return ranked[0]?.candidate ?? null;
}

function proposal(role: AxisRole, { device, field }: Candidate): ProposedAxis {
  return {
    role,
    device,
    field: locationOf(field),
    calibration: describedCalibration(role, field),
    status: 'unconfirmed',
    described: field,
  };
}

function describedCalibration(
  role: AxisRole,
  { logicalMin, logicalMax }: ReportField,
): AxisCalibration {
  const [restCounts, fullCounts] =
    role === 'steering'
      ? [Math.round((logicalMin + logicalMax) / 2), logicalMin]
      : [logicalMin, logicalMax];
  return { restCounts, fullCounts, deadStart: 0, deadEnd: 0, sensor: 'unknown', load: null };
}

/** The place alone, without what the descriptor says beside it. */
function locationOf({ reportId, bitOffset, bitSize, signed }: FieldLocation): FieldLocation {
  return { reportId, bitOffset, bitSize, signed };
}
