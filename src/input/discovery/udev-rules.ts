import type { RigDevice } from '../rig-device.ts';
import { cleanText } from './clean-text.ts';

/** Where the rules belong: `uaccess` works from files that sort before 73. */
export const UDEV_RULES_FILE = '/etc/udev/rules.d/70-ebbline.rules';

/** Makes the rules count without a restart; a device that is plugged in has to be plugged in again. */
export const UDEV_RELOAD = 'sudo udevadm control --reload-rules && sudo udevadm trigger';

/** The part of a device that a rule is made of. */
export type RuledDevice = Pick<RigDevice, 'identity' | 'name'>;

/**
 * The udev rule that gives the user at the screen access to one model of device. Without a USB interface (Bluetooth)
 * the ids are only in the name of the HID parent, in capitals.
 */
export function udevRule({ identity }: Pick<RuledDevice, 'identity'>): string {
  const [vendor, product] = [hex(identity.vendorId), hex(identity.productId)];
  const match =
    identity.interfaceNumber >= 0
      ? `ATTRS{idVendor}=="${vendor}", ATTRS{idProduct}=="${product}"`
      : `KERNELS=="*:${vendor.toUpperCase()}:${product.toUpperCase()}.*"`;
  return `KERNEL=="hidraw*", ${match}, TAG+="uaccess"`;
}

/** Lines of a rules file for exactly these devices, each model once, its name in a comment above it. */
export function udevRules(devices: readonly RuledDevice[]): readonly string[] {
  const byRule = new Map(devices.map((device) => [udevRule(device), device.name]));
  return [...byRule].flatMap(([rule, name]) => [`# ${commentText(name)}`, rule]);
}

/** A name that a device brought must not end the comment: one line, and no backslash that would continue it. */
function commentText(name: string): string {
  return cleanText(name).replaceAll('\\', '/') || 'a device without a name';
}

/** Four hexadecimal digits, whatever number a device claims. */
function hex(id: number): string {
  return (id & 0xffff).toString(16).padStart(4, '0');
}
