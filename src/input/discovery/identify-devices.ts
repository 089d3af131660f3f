import type { HidRecord } from '../reader/hid-api.ts';
import type { DeviceIdentity } from '../rig-device.ts';
import { cleanSerial } from './clean-serial.ts';
import { isRigUsage } from './rig-usages.ts';

/** A device with a path of its own; its collections together. */
export interface IdentifiedDevice {
  readonly identity: DeviceIdentity;
  readonly path: string;
  /** The record its identity was taken from; the strings in it are not to be printed. */
  readonly record: HidRecord;
  /** Top-level collections as usage page << 16 | usage. */
  readonly applications: readonly number[];
}

/**
 * The devices behind the system's records: on Linux and macOS a device has one record per top-level collection, all
 * with one path. The identity is that of the first collection that belongs to pedals or a wheel, else of the first.
 */
export function identifyDevices(records: readonly HidRecord[]): IdentifiedDevice[] {
  const byPath = new Map<string, HidRecord[]>();
  for (const record of records) {
    if (!record.path) continue;
    byPath.set(record.path, [...(byPath.get(record.path) ?? []), record]);
  }
  return [...byPath].map(([path, collections]) => {
    const record = collections.find((c) => isRigUsage(application(c))) ?? collections[0]!;
    return { path, record, identity: identity(record), applications: collections.map(application) };
  });
}

function application(record: HidRecord): number {
  return (record.usagePage ?? 0) * 0x10000 + (record.usage ?? 0);
}

function identity(record: HidRecord): DeviceIdentity {
  return {
    vendorId: record.vendorId,
    productId: record.productId,
    serial: cleanSerial(record.serialNumber),
    interfaceNumber: record.interface,
    usagePage: record.usagePage ?? 0,
    usage: record.usage ?? 0,
  };
}
