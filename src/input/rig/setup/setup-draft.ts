import { createHash } from 'node:crypto';
import type { ButtonAction } from '../../../trace/rig-batch.ts';
import type { DeviceIdentity, RigDevice } from '../../rig-device.ts';
import type { AxisRole } from '../rig.ts';
import { identityText, sameDevice } from '../same-device.ts';
import type { RigDraft } from './rig-draft.ts';

/** One thing that setting up asks for; each can be the last one before it is left. */
export type SetupStep = 'driver' | AxisRole | ButtonAction;

/** How far setting up had come when it was left, and with what. */
export interface SetupDraft {
  readonly done: readonly SetupStep[];
  readonly devices: readonly DraftDevice[];
}

/** A device as it was then. */
interface DraftDevice {
  readonly identity: DeviceIdentity;
  readonly name: string;
  /** SHA-256 of its report descriptor; null where the system gave none. */
  readonly descriptorSha: string | null;
}

export function draftDevice({ identity, name, descriptor }: RigDevice): DraftDevice {
  const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
  return { identity, name, descriptorSha: descriptor === null ? null : hash(descriptor) };
}

/** What is left of a draft with the devices that are here now. */
interface ResumedDraft {
  /** Steps that need not be asked again. */
  readonly done: readonly SetupStep[];
  /** What became of the devices, in words; empty where all is as it was. */
  readonly changes: readonly string[];
}

/**
 * Steps that still hold: an axis or button on a device that has not changed, and what was passed over while no device
 * is new. A device that now describes other reports has to be moved again.
 */
export function resumeDraft(
  draft: SetupDraft,
  devices: readonly RigDevice[],
  rig: RigDraft,
): ResumedDraft {
  const now = devices.map(draftDevice);
  const then = (device: DraftDevice): DraftDevice | undefined =>
    draft.devices.find(({ identity }) => sameDevice(identity, device.identity));
  const isChanged = (device: DraftDevice): boolean =>
    then(device) !== undefined && then(device)?.descriptorSha !== device.descriptorSha;
  const fresh = now.filter((device) => then(device) === undefined);
  const changed = now.filter(isChanged);
  const gone = draft.devices.filter(
    ({ identity }) => !now.some((device) => sameDevice(device.identity, identity)),
  );
  const holds = (step: SetupStep): boolean => {
    if (step === 'driver') return true;
    const device = deviceOfStep(step, rig);
    if (device !== null) return !changed.some(({ identity }) => sameDevice(identity, device));
    return step !== 'brake' && fresh.length + changed.length === 0;
  };
  return {
    done: draft.done.filter(holds),
    changes: [
      ...changed.map(
        ({ name }) => `${name} describes other reports than then: its controls are asked again.`,
      ),
      ...fresh.map(({ name }) => `${name} is new: what was passed over is asked again.`),
      ...gone.map(
        ({ name, identity }) => `${name || identityText(identity)} is not connected now.`,
      ),
    ],
  };
}

function deviceOfStep(step: Exclude<SetupStep, 'driver'>, rig: RigDraft): DeviceIdentity | null {
  const axis = ROLES.find((role) => role === step);
  const place = axis === undefined ? rig.button(step as ButtonAction) : rig.axis(axis);
  return place?.device ?? null;
}

const ROLES: readonly AxisRole[] = ['brake', 'throttle', 'clutch', 'steering'];
