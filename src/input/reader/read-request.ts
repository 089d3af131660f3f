import type { RigDevice } from '../rig-device.ts';

/** What a reader is asked to read; it can be sent to another thread. */
export interface ReadRequest {
  /** A report's device number is the index in here. */
  readonly devices: readonly Pick<RigDevice, 'identity' | 'path'>[];
  /** Address of a module that stands in for the HID library (a `HidModule`); null for the real one. */
  readonly hidModule: string | null;
  /** Milliseconds between two looks for a device that is missing; 1000 unless a test is in a hurry. */
  readonly seekMs?: number;
}

/** A device could not be opened when reading was to start. */
export class OpenFailure extends Error {
  override readonly name = 'OpenFailure';
  /** Index into the request's devices. */
  readonly device: number;

  constructor(device: number, reason: string) {
    super(reason);
    this.device = device;
  }
}
