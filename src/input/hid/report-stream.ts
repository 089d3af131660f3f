import { compileField } from './compile-field.ts';
import type { ControlRecording, Reports } from './control-recording.ts';
import type { FieldLocation } from './report-field.ts';

/** The reports of one report id, as in the recording they come from, without the id byte. */
export interface ReportStream {
  /** 0 where the device does not number its reports. */
  readonly reportId: number;
  /** Bits that every report of this stream has. */
  readonly bits: number;
  readonly rest: Reports;
  readonly moved: Reports;
  readonly others: readonly Reports[];
  /** A byte of a report each: ones where a bit changed while the control was moved. */
  readonly changing: Uint8Array;
}

/** True for a bit that changed while the control was moved. */
export function isChanging({ changing }: ReportStream, bit: number): boolean {
  return ((changing[bit >> 3]! >> (bit & 7)) & 1) === 1;
}

/** A recording taken apart by report id. */
export function reportStreams(recording: ControlRecording, numbered: boolean): ReportStream[] {
  if (!numbered) return [streamOf(recording, 0)];
  const ids = new Set(recording.moved.map((report) => report[0] ?? 0));
  return [...ids].filter((id) => id !== 0).map((id) => streamOf(recording, id));
}

function streamOf(recording: ControlRecording, reportId: number): ReportStream {
  const pick = (reports: Reports): Reports =>
    reportId === 0
      ? reports
      : reports.filter((report) => report[0] === reportId).map((report) => report.subarray(1));
  const rest = pick(recording.rest);
  const moved = pick(recording.moved);
  const others = recording.others.map(pick);
  const bytes = [rest, moved, ...others].flat().reduce(shorter, Number.POSITIVE_INFINITY);
  const sure = Number.isFinite(bytes) ? bytes : 0;
  return { reportId, bits: 8 * sure, rest, moved, others, changing: changingBits(moved, sure) };
}

function changingBits(moved: Reports, bytes: number): Uint8Array {
  const changing = new Uint8Array(bytes);
  const first = moved[0];
  for (const report of moved)
    for (let i = 0; i < bytes; i++) changing[i]! |= report[i]! ^ first![i]!;
  return changing;
}

function shorter(bytes: number, report: Uint8Array): number {
  return Math.min(bytes, report.length);
}

/** A range of bits of a stream, read as one number. */
export type BitRange = Omit<FieldLocation, 'reportId'>;

/** The values of a range of bits, one per report. Every report must reach that far. */
export function readSeries(reports: Reports, range: BitRange): Float64Array {
  const read = compileField({ ...range, reportId: 0 });
  const series = new Float64Array(reports.length);
  for (let i = 0; i < series.length; i++) {
    const report = reports[i]!;
    series[i] = read(report, 0, report.length) ?? 0;
  }
  return series;
}
