import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Problem } from '../../problem.ts';
import type { RigDevice } from '../rig-device.ts';
import type { AxisAssignment, Rig } from './rig.ts';
import { parseRigText, writeRigText } from './rig-file-text.ts';
import { sameDevice } from './same-device.ts';
import { writePrivateFile } from './write-private-file.ts';

/** Where the rigs are kept. */
export function rigFile(dataDir: string): string {
  return join(dataDir, 'rig.json');
}

/**
 * The rig to drive with: of those whose brake is among the devices, the one with most of its axes there, the last used
 * where several fit. Without devices the last one used.
 * @returns null where none was saved or none fits.
 * @throws Problem for a file that is damaged, newer than the program or not to be read.
 */
export async function loadRig(
  dataDir: string,
  devices?: readonly Pick<RigDevice, 'identity'>[],
): Promise<Rig | null> {
  const rigs = await loadRigs(dataDir);
  if (devices === undefined) return rigs[0] ?? null;
  const here = ({ device }: AxisAssignment): boolean =>
    devices.some(({ identity }) => sameDevice(identity, device));
  const axesHere = (rig: Rig): number => rig.axes.filter(here).length;
  const drivable = rigs.filter(({ axes }) =>
    axes.some((axis) => axis.role === 'brake' && here(axis)),
  );
  const most = Math.max(...drivable.map(axesHere));
  return drivable.find((rig) => axesHere(rig) === most) ?? null;
}

/** All rigs that were saved, the last one used first. @throws Problem as `loadRig`. */
export async function loadRigs(dataDir: string): Promise<readonly Rig[]> {
  const file = rigFile(dataDir);
  const text = await readIfThere(file);
  return text === null ? [] : parseRigText(text, file);
}

/**
 * Saves a rig in place of those that it covers with its devices; rigs with a device of their own are kept.
 * @throws Problem where the file cannot be written, or is there and cannot be read: it is then left as it is.
 */
export async function saveRig(dataDir: string, rig: Rig): Promise<void> {
  const covered = deviceSet(rig);
  const others = (await loadRigs(dataDir)).filter((other) =>
    [...deviceSet(other)].some((device) => !covered.has(device)),
  );
  await writePrivateFile(rigFile(dataDir), writeRigText([rig, ...others]));
}

async function readIfThere(file: string): Promise<string | null> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return null;
    throw new Problem(`it cannot be read: ${message}`, {
      where: file,
      next: 'Make it readable, or choose another folder with --data-dir.',
    });
  }
}

function deviceSet({ axes }: Rig): Set<string> {
  return new Set(
    axes.map(({ device: d }) =>
      JSON.stringify([d.vendorId, d.productId, d.serial, d.interfaceNumber, d.usagePage, d.usage]),
    ),
  );
}
