import { cleanText } from '../discovery/clean-text.ts';
import type { LooseReport } from '../rig/pack-reports.ts';
import type { RecordingEntry } from './recording.ts';

/** What is wrong with a line, in words; the reader knows which line it is. */
export class LineFault extends Error {}

/** @throws SyntaxError for a line that is no JSON, LineFault for one that is no line of a recording. */
export function parseRecordingLine(text: string, deviceCount: number): RecordingEntry {
  const value: unknown = JSON.parse(text);
  if (typeof value !== 'object' || value === null) throw new LineFault('it is no object');
  const fields = value as Readonly<Record<string, unknown>>;
  if ('event' in fields) return eventEntry(fields, deviceCount);
  const { until_us: untilUs, dropped, reports } = fields;
  if (!Array.isArray(reports)) throw new LineFault('it has no "reports"');
  return {
    kind: 'batch',
    untilUs: finite(untilUs, 'until_us'),
    dropped: finite(dropped, 'dropped'),
    reports: reports.map((report: unknown) => looseReport(report, deviceCount)),
  };
}

function eventEntry(
  fields: Readonly<Record<string, unknown>>,
  deviceCount: number,
): RecordingEntry {
  const device = deviceIndex(fields.device, deviceCount);
  const atUs = finite(fields.at_us, 'at_us');
  if (fields.event === 'back') return { kind: 'event', event: { kind: 'back', device, atUs } };
  if (fields.event !== 'lost') throw new LineFault('"event" is neither "lost" nor "back"');
  const reason = typeof fields.reason === 'string' ? cleanText(fields.reason, 200) : 'no reason';
  return { kind: 'event', event: { kind: 'lost', device, atUs, reason } };
}

function looseReport(report: unknown, deviceCount: number): LooseReport {
  if (!Array.isArray(report) || report.length !== 3)
    throw new LineFault('a report is not [device, time_us, hex]');
  const [device, timeUs, hex] = report as readonly unknown[];
  return {
    device: deviceIndex(device, deviceCount),
    timeUs: finite(timeUs, 'time_us'),
    bytes: hexBytes(hex),
  };
}

/** Bytes of an even number of hexadecimal digits. @throws LineFault */
export function hexBytes(hex: unknown): Uint8Array {
  if (typeof hex !== 'string' || !/^(?:[0-9a-fA-F]{2})*$/.test(hex))
    throw new LineFault('bytes are not pairs of hexadecimal digits');
  return Uint8Array.from(Buffer.from(hex, 'hex'));
}

function deviceIndex(device: unknown, deviceCount: number): number {
  if (Number.isInteger(device) && (device as number) >= 0 && (device as number) < deviceCount)
    return device as number;
  throw new LineFault(`device ${JSON.stringify(device)} is not one of the header's ${deviceCount}`);
}

function finite(value: unknown, name: string): number {
  if (typeof value === 'number') return value;
  throw new LineFault(`"${name}" is no number`);
}
