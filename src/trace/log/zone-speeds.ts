import type { LoggedZone } from './logged-zone.ts';

/** Null where the log has no speed. */
export interface ZoneSpeeds {
  /** Where the brake goes on. */
  readonly entryMps: number | null;
  readonly slowestMps: number | null;
}

export function zoneSpeeds({ samples }: Pick<LoggedZone, 'samples'>): ZoneSpeeds {
  const speed = samples.get('speed');
  if (speed === undefined) return { entryMps: null, slowestMps: null };
  const from = samples.get('time')!.findIndex((timeS) => timeS >= 0);
  const inside = speed.subarray(from);
  return { entryMps: inside[0]!, slowestMps: Math.min(...inside) };
}
