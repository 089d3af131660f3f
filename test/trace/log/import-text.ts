import { LogReader } from '../../../src/trace/log/log-reader.ts';
import { LogRefused, type LogSummary, type LogWish } from '../../../src/trace/log/log-settings.ts';
import type { LoggedZone } from '../../../src/trace/log/logged-zone.ts';

export interface Imported {
  readonly zones: readonly LoggedZone[];
  readonly summary: LogSummary;
}

const SILENT: LogWish = {
  columns: new Map(),
  units: new Map(),
  brake: null,
  delimiter: null,
  decimal: null,
  rateHz: null,
  steeringPositive: null,
};

export function importBytes(chunks: readonly Uint8Array[], wish: Partial<LogWish> = {}): Imported {
  const zones: LoggedZone[] = [];
  const reader = new LogReader({ ...SILENT, ...wish }, (zone) => zones.push(zone));
  for (const chunk of chunks) reader.push(chunk);
  return { summary: reader.end(), zones };
}

export function importText(text: string, wish: Partial<LogWish> = {}): Imported {
  return importBytes([new TextEncoder().encode(text)], wish);
}

/** `line: what next` of the first problem. */
export function refusal(text: string, wish: Partial<LogWish> = {}): string {
  try {
    importText(text, wish);
  } catch (error) {
    if (!(error instanceof LogRefused)) throw error;
    const { line, what, next } = error.problems[0]!;
    return `${line}: ${what}. ${next}`;
  }
  throw new Error('not refused');
}
