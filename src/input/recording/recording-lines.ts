import type { ReportBatch } from '../report-batch.ts';
import type { DeviceEvent } from '../report-source.ts';
import type { RecordingHeader } from './recording.ts';

export const RECORDING_FORMAT = 'ebbline reports';
export const RECORDING_VERSION = 1;

/*
 * A recording is text, one JSON value a line (UTF-8, LF). Times are microseconds of the source's monotonic clock, bytes
 * are hexadecimal, report ids included as the device sent them. Paths are left out: they mean nothing elsewhere.
 *
 *   {"format":"ebbline reports","version":1,"label":TEXT,
 *    "devices":[{"identity":{...},"name":TEXT,"descriptor":HEX or null}, ...],"rig":{...} or null}
 *   {"until_us":NUMBER,"dropped":NUMBER,"reports":[[device,time_us,HEX], ...]}        one line per batch
 *   {"event":"lost","device":NUMBER,"at_us":NUMBER,"reason":TEXT}
 *   {"event":"back","device":NUMBER,"at_us":NUMBER}
 */

/** The header as a line, newline included. */
export function headerLine({ label, devices, rig }: RecordingHeader): string {
  return line({
    format: RECORDING_FORMAT,
    version: RECORDING_VERSION,
    label,
    devices: devices.map(({ identity, name, descriptor }) => ({
      identity,
      name,
      descriptor: descriptor === null ? null : toHex(descriptor),
    })),
    rig,
  });
}

/** One batch as a line, newline included. */
export function batchLine(batch: ReportBatch): string {
  const reports = Array.from({ length: batch.count }, (_, i) => {
    const start = batch.offset[i]!;
    const bytes = batch.bytes.subarray(start, start + batch.length[i]!);
    return [batch.device[i]!, batch.timeUs[i]!, toHex(bytes)];
  });
  return line({ until_us: batch.untilUs, dropped: batch.dropped, reports });
}

/** A device event as a line, newline included. */
export function eventLine(event: DeviceEvent): string {
  const { kind, device, atUs } = event;
  const reason = event.kind === 'lost' ? { reason: event.reason } : {};
  return line({ event: kind, device, at_us: atUs, ...reason });
}

function line(value: object): string {
  return `${JSON.stringify(value)}\n`;
}

function toHex(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('hex');
}
