import { constants } from 'node:fs';
import { access } from 'node:fs/promises';
import { Problem } from '../../problem.ts';
import type { RigDevice } from '../rig-device.ts';
import { UDEV_RELOAD, UDEV_RULES_FILE, udevRule } from './udev-rules.ts';

type CheckAccess = (path: string, mode: number) => Promise<void>;

/**
 * What keeps this user from opening a device, found without opening it; null where nothing is known to. Only Linux
 * tells: there a device is a file that has to be readable and writable.
 */
export async function accessProblem(
  device: Omit<RigDevice, 'descriptor'>,
  checkAccess: CheckAccess = access,
): Promise<Problem | null> {
  if (!device.path.startsWith('/dev/')) return null;
  try {
    await checkAccess(device.path, constants.R_OK | constants.W_OK);
    return null;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EACCES') return null;
    return new Problem(`no permission to read ${device.name}`, {
      where: device.path,
      next: [
        `Put this line into ${UDEV_RULES_FILE}:`,
        `    ${udevRule(device)}`,
        `  then run \`${UDEV_RELOAD}\` and plug it in again.`,
      ].join('\n'),
    });
  }
}
