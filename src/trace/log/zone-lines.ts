import type { LogRole } from './log-roles.ts';
import type { LogSummary } from './log-settings.ts';
import type { LoggedZone, ZoneSamples } from './logged-zone.ts';
import { nineDigits } from './nine-digits.ts';

/**
 * The file of an imported log: JSON lines in UTF-8. The first says `{"ebbline_trace":1,...}` where it comes from, each
 * further one is a zone, the last is the summary; a file without that one was not finished. Numbers have nine digits.
 */
const TRACE_VERSION = 1;

/** How the file names each signal, with the unit it is kept in. */
const SAMPLE_NAMES: Readonly<Record<LogRole, string>> = {
  time: 'time_s',
  distance: 'distance_m',
  lap: 'lap',
  'brake-level': 'level',
  'brake-front': 'front_pressure_pa',
  'brake-rear': 'rear_pressure_pa',
  'pedal-force': 'pedal_force_n',
  speed: 'speed_mps',
  steering: 'steering_deg',
  throttle: 'throttle',
  gear: 'gear',
  'lateral-acceleration': 'lateral_acceleration_mps2',
  'longitudinal-acceleration': 'longitudinal_acceleration_mps2',
  'yaw-rate': 'yaw_rate_radps',
};

/** What an imported log holds. */
export interface ImportedTrace {
  readonly name: string;
  /** The file it was read from, as the user named it. */
  readonly source: string;
  readonly zones: readonly LoggedZone[];
  readonly summary: LogSummary;
}

export function headLine(name: string, source: string): string {
  return `${JSON.stringify({ ebbline_trace: TRACE_VERSION, name, source })}\n`;
}

/** One zone as a line. A value that is not known is null, and so is `after` where there is nothing. */
export function zoneLine({ samples, gaps, after, ...zone }: LoggedZone): string {
  const rest = { zone: zone.number, lap: zone.lap, line: zone.line, start_s: zone.startS };
  const texts = { samples: signalTexts(samples), after: after && signalTexts(after) };
  return `${JSON.stringify({ ...rest, gaps, ...texts })}\n`;
}

function signalTexts(samples: ZoneSamples): Record<string, (number | null)[]> {
  const signals = [...samples].map(([role, values]) => [
    SAMPLE_NAMES[role],
    Array.from(values, (value) => (Number.isNaN(value) ? null : nineDigits(value))),
  ]);
  return Object.fromEntries(signals);
}

export function summaryLine(summary: LogSummary): string {
  return `${JSON.stringify({ summary })}\n`;
}

/** Reads what the lines above wrote; null for any other text, and for a file that was not finished. */
export function readTraceLines(text: string): ImportedTrace | null {
  try {
    const lines = text
      .trimEnd()
      .split('\n')
      .map((line): unknown => JSON.parse(line));
    const head = lines[0] as {
      ebbline_trace: number;
      name: string;
      source: string;
    };
    const { summary } = lines.at(-1) as { summary?: LogSummary };
    if (head.ebbline_trace !== TRACE_VERSION || summary === undefined) return null;
    const zones = lines.slice(1, -1).map(zoneOf);
    return { name: head.name, source: head.source, zones, summary };
  } catch {
    return null;
  }
}

interface ZoneText {
  readonly zone: number;
  readonly lap: number | null;
  readonly line: number;
  readonly start_s: number;
  readonly gaps: LoggedZone['gaps'];
  readonly samples: SignalTexts;
  /** Files of before it was kept have none. */
  readonly after?: SignalTexts | null;
}

type SignalTexts = Readonly<Record<string, readonly (number | null)[]>>;

const ROLES_BY_NAME: ReadonlyMap<string, LogRole> = new Map(
  Object.entries(SAMPLE_NAMES).map(([role, name]) => [name, role as LogRole]),
);

function zoneOf(line: unknown): LoggedZone {
  const { zone, lap, line: fileLine, start_s, gaps, samples, after } = line as ZoneText;
  const rest = { number: zone, lap, line: fileLine, startS: start_s, gaps };
  return { ...rest, samples: signalsOf(samples), after: after ? signalsOf(after) : null };
}

function signalsOf(texts: SignalTexts): ZoneSamples {
  const signals = Object.entries(texts).flatMap(([name, values]) => {
    const role = ROLES_BY_NAME.get(name);
    return role === undefined
      ? []
      : [[role, Float64Array.from(values, (value) => value ?? Number.NaN)] as const];
  });
  return new Map(signals);
}
