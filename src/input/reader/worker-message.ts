import type { DeviceEvent } from '../report-source.ts';
import type { ReadRequest } from './read-request.ts';

/** What the reader's worker is started with. */
export interface WorkerOrder {
  readonly request: ReadRequest;
  readonly ring: SharedArrayBuffer;
  /** One 32-bit integer, 0 until all devices are closed and the worker is about to end. */
  readonly closed: SharedArrayBuffer;
}

/**
 * What the worker tells. `started` comes first, then one of `reading`, `problem` and `unopened`, then events. `broken`
 * may come at any time; nothing comes after it.
 */
export type WorkerMessage =
  | { readonly kind: 'started' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'problem'; readonly what: string; readonly next: string }
  | { readonly kind: 'unopened'; readonly device: number; readonly reason: string }
  | { readonly kind: 'event'; readonly event: DeviceEvent }
  | { readonly kind: 'broken'; readonly reason: string };

/** The one thing the worker is told: stop reading, close the devices and end. */
export const CLOSE_ORDER = 'close';
