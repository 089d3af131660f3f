import type { DeviceEvent } from '../report-source.ts';

/** Devices being read into a ring, on whatever thread. */
export interface ReportReader {
  readonly ring: SharedArrayBuffer;
  /** Whether reading has a thread of its own, so that a busy main thread delays no time stamp. */
  readonly threaded: boolean;
  /** Stops reading and lets go of the devices; takes 0.3 s at most. Idempotent. */
  close(): Promise<void>;
}

export type EmitDeviceEvent = (event: DeviceEvent) => void;

/** Closing a device may hang in a driver; nobody waits longer for it than this. */
export const CLOSE_GUARD_MS = 300;
