/** What tells one device from another over time; never a path, which changes when it is plugged in again. */
export interface DeviceIdentity {
  readonly vendorId: number;
  readonly productId: number;
  /** Null where the device has none or a constant one. */
  readonly serial: string | null;
  readonly interfaceNumber: number;
  /** Usage page and usage of the top-level collection, 0 where the system does not say. */
  readonly usagePage: number;
  readonly usage: number;
}

/** A device as the source opened it. */
export interface RigDevice {
  readonly identity: DeviceIdentity;
  /** Product name with control characters and markup taken out; safe to print. */
  readonly name: string;
  /** Where the system keeps it now, for messages only. */
  readonly path: string;
  /** Report descriptor, null where the system gives none. */
  readonly descriptor: Uint8Array | null;
}
