import type { DeviceIdentity } from '../rig-device.ts';

/**
 * True where both identities name one device. A system that does not say usage page and usage gives 0 for them,
 * which fits any.
 */
export function sameDevice(a: DeviceIdentity, b: DeviceIdentity): boolean {
  return (
    a.vendorId === b.vendorId &&
    a.productId === b.productId &&
    a.serial === b.serial &&
    a.interfaceNumber === b.interfaceNumber &&
    (a.usagePage === b.usagePage || a.usagePage === 0 || b.usagePage === 0) &&
    (a.usage === b.usage || a.usage === 0 || b.usage === 0)
  );
}

/** A short name for a device that is not here to tell its own: vendor and product in hexadecimal, then the serial. */
export function identityText({ vendorId, productId, serial }: DeviceIdentity): string {
  const hex = (id: number): string => id.toString(16).padStart(4, '0');
  return `${hex(vendorId)}:${hex(productId)}${serial === null ? '' : ` ${serial}`}`;
}
