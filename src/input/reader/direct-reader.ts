import { setTimeout as delay } from 'node:timers/promises';
import { loadHidModule } from './load-hid-module.ts';
import type { ReadRequest } from './read-request.ts';
import { Reading } from './reading.ts';
import { CLOSE_GUARD_MS, type EmitDeviceEvent, type ReportReader } from './report-reader.ts';
import { createRing } from './ring-memory.ts';

/**
 * Reads on the calling thread, for systems on which the worker does not start. A frame that takes long then delays
 * the time stamps of the reports that arrive during it.
 *
 * @throws Problem where the HID library does not load; OpenFailure where a device does not open
 */
export async function startDirectReader(
  request: ReadRequest,
  emit: EmitDeviceEvent,
): Promise<ReportReader> {
  const hid = await loadHidModule(request.hidModule);
  const ring = createRing();
  const reading = await Reading.start(hid, request, ring, emit);
  const close = (): Promise<void> =>
    Promise.race([reading.close(), delay(CLOSE_GUARD_MS, undefined, { ref: false })]);
  return { ring, threaded: false, close };
}
