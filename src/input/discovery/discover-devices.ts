import { parseDescriptor } from '../hid/parse-descriptor.ts';
import type { HidApi } from '../reader/hid-api.ts';
import { loadHid } from '../reader/node-hid.ts';
import { accessProblem } from './access-problem.ts';
import { cleanText } from './clean-text.ts';
import type { FoundDevice } from './found-device.ts';
import { type IdentifiedDevice, identifyDevices } from './identify-devices.ts';
import { readDescriptor } from './read-descriptor.ts';
import { readKernelName } from './read-kernel-name.ts';
import { hasAxis, isDeskUsage, isRigUsage } from './rig-usages.ts';

/** What discovery asks of the world; the real one by default. */
export interface DiscoveryPorts {
  readonly hid?: HidApi;
  readonly readDescriptor?: typeof readDescriptor;
  readonly readKernelName?: typeof readKernelName;
  readonly accessProblem?: typeof accessProblem;
}

/**
 * Every HID device that is plugged in, likely pedals and wheels first. Takes about 10 ms, on a bad bus seconds, so
 * not more than once a second.
 *
 * @throws Problem where the HID library does not load.
 */
export async function discoverDevices(ports: DiscoveryPorts = {}): Promise<FoundDevice[]> {
  const hid = ports.hid ?? (await loadHid());
  const identified = identifyDevices(await hid.records());
  const found = await Promise.all(identified.map((device) => inspect(device, ports)));
  return [...found.filter(isRig), ...found.filter((device) => !isRig(device))];
}

/** The devices that are likely pedals or wheels. Never a mouse or a keyboard. */
export function likelyRigDevices(found: readonly FoundDevice[]): FoundDevice[] {
  return found.filter(isRig);
}

/** What setting up a rig may listen to: the likely devices, or everything where there is no likely one. */
export function setupCandidates(found: readonly FoundDevice[]): FoundDevice[] {
  const likely = likelyRigDevices(found);
  return likely.length > 0 ? likely : [...found];
}

function isRig(device: FoundDevice): boolean {
  return device.kind === 'rig';
}

async function inspect(device: IdentifiedDevice, ports: DiscoveryPorts): Promise<FoundDevice> {
  const { identity, path, record } = device;
  const descriptor = await (ports.readDescriptor ?? readDescriptor)(path);
  const named = {
    identity,
    path,
    name: await nameOf(device, ports.readKernelName ?? readKernelName),
    maker: cleanText(record.manufacturer ?? ''),
  };
  return {
    ...named,
    descriptor,
    kind: kindOf(device.applications, descriptor),
    problem: await (ports.accessProblem ?? accessProblem)(named),
  };
}

async function nameOf(
  { identity, path, record }: IdentifiedDevice,
  kernelName: typeof readKernelName,
): Promise<string> {
  const name = cleanText(record.product || ((await kernelName(path)) ?? ''));
  const ids = [identity.vendorId, identity.productId].map((n) => n.toString(16).padStart(4, '0'));
  return name || `HID device ${ids.join(':')}`;
}

function kindOf(
  applications: readonly number[],
  descriptor: Uint8Array | null,
): FoundDevice['kind'] {
  if (applications.some(isRigUsage)) return 'rig';
  if (applications.some(isDeskUsage)) return 'desk';
  return descriptor !== null && describesAxis(descriptor) ? 'rig' : 'other';
}

function describesAxis(descriptor: Uint8Array): boolean {
  try {
    return hasAxis(parseDescriptor(descriptor));
  } catch {
    // A descriptor that cannot be read names no axis; setting up by moving the pedals still works.
    return false;
  }
}
