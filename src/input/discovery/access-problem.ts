import { constants } from 'node:fs';
import { access } from 'node:fs/promises';
import { Problem } from '../../problem.ts';
import type { RigDevice } from '../rig-device.ts';

const RULES_FILE = '/etc/udev/rules.d/70-ebbline.rules';

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
        `Put this line into ${RULES_FILE}:`,
        `    ${udevRule(device)}`,
        '  then run `sudo udevadm control --reload-rules && sudo udevadm trigger` and plug it in again.',
      ].join('\n'),
    });
  }
}

/**
 * The udev rule that gives the user at the screen access to one model of device. Without a USB interface (Bluetooth)
 * the ids are only in the name of the HID parent, in capitals. `uaccess` works from files that sort before 73.
 */
export function udevRule({ identity }: Pick<RigDevice, 'identity'>): string {
  const [vendor, product] = [hex(identity.vendorId), hex(identity.productId)];
  const match =
    identity.interfaceNumber >= 0
      ? `ATTRS{idVendor}=="${vendor}", ATTRS{idProduct}=="${product}"`
      : `KERNELS=="*:${vendor.toUpperCase()}:${product.toUpperCase()}.*"`;
  return `KERNEL=="hidraw*", ${match}, TAG+="uaccess"`;
}

function hex(id: number): string {
  return id.toString(16).padStart(4, '0');
}
