import type { ControlRecording, Refusal, Reports } from '../../hid/control-recording.ts';
import { type LearnedAxis, learnAxis } from '../../hid/learn-axis.ts';
import { type LearnedButton, learnButton } from '../../hid/learn-button.ts';
import type { FieldLocation, ReportField } from '../../hid/report-field.ts';
import type { RigDevice } from '../../rig-device.ts';
import { deviceFields } from '../device-fields.ts';
import type { Taped } from './report-tape.ts';

/** What was recorded to find one control, all devices together. */
interface Movement {
  readonly rest: Taped;
  readonly moved: Taped;
  /** Other controls moved alone. */
  readonly others: readonly Taped[];
}

/** A control, and the device it is on. */
export interface FoundControl<Learned> {
  readonly kind: 'found';
  readonly device: number;
  readonly learned: Learned;
}

/** The axis that moved; where several devices moved, the one that went furthest. */
export function findAxis(
  devices: readonly RigDevice[],
  movement: Movement,
): FoundControl<LearnedAxis> | Refusal {
  const results = devices.map((device, i) => {
    const described = deviceFields(device);
    const learn = (fields: readonly FieldLocation[] | null): LearnedAxis | Refusal =>
      learnAxis(recordingOf(movement, i, described, fields));
    const named = described.length > 0 ? learn(described.filter(isAxis)) : null;
    // Some descriptors lie: what they do not name is then looked for in every bit.
    return named === null || named.kind === 'refused' ? better(named, learn(null)) : named;
  });
  return best(
    results,
    ({ minCounts, maxCounts, field }) => (maxCounts - minCounts) / 2 ** field.bitSize,
  );
}

/** The button that was pressed. */
export function findButton(
  devices: readonly RigDevice[],
  movement: Movement,
): FoundControl<LearnedButton> | Refusal {
  const results = devices.map((device, i) => {
    const described = deviceFields(device);
    const bits = described.filter(({ bitSize }) => bitSize === 1);
    return learnButton(recordingOf(movement, i, described, bits.length > 0 ? bits : null));
  });
  return best(results, () => 1);
}

function recordingOf(
  { rest, moved, others }: Movement,
  device: number,
  described: readonly ReportField[],
  fields: readonly FieldLocation[] | null,
): ControlRecording {
  const own = (taped: Taped): Reports =>
    taped.filter((report) => report.device === device).map(({ bytes }) => bytes);
  return {
    rest: own(rest),
    moved: own(moved),
    others: others.map(own),
    numbered: described.length > 0 ? described.some(({ reportId }) => reportId > 0) : null,
    fields,
  };
}

function isAxis({ variable, relative, bitSize }: ReportField): boolean {
  return variable && !relative && bitSize > 1;
}

/** What the driver has to be told first: that something else moved says more than that nothing did. */
const BY_WEIGHT: readonly Refusal['reason'][] = ['nothing-moved', 'no-reports'];

function best<Learned extends LearnedAxis | LearnedButton>(
  results: readonly (Learned | Refusal)[],
  reach: (learned: Learned) => number,
): FoundControl<Learned> | Refusal {
  const found = results
    .map((learned, device) => ({ kind: 'found' as const, device, learned }))
    .filter((entry): entry is FoundControl<Learned> => entry.learned.kind !== 'refused')
    .sort((a, b) => reach(b.learned) - reach(a.learned));
  const refusals = results.filter((result): result is Refusal => result.kind === 'refused');
  return found[0] ?? refusals.reduce((a, b) => better(a, b) as Refusal);
}

function better<Learned>(a: Learned | Refusal | null, b: Learned | Refusal): Learned | Refusal {
  if (a === null || !isRefusal(b)) return b;
  return isRefusal(a) && BY_WEIGHT.includes(a.reason) && !BY_WEIGHT.includes(b.reason) ? b : a;
}

function isRefusal(value: unknown): value is Refusal {
  return (value as { readonly kind?: unknown }).kind === 'refused';
}
