import type { Gap } from '../gap.ts';
import type { LogRole } from './log-roles.ts';

/** The roles that can stand for how hard the brake is pressed. */
export const BRAKE_ROLES = ['brake-level', 'brake-front', 'brake-rear', 'pedal-force'] as const;
export type BrakeRole = (typeof BRAKE_ROLES)[number];

/** Signals of one zone in kept units (SI, level 0..1, degrees of steering); all of one length. */
export type ZoneSamples = ReadonlyMap<LogRole | 'time', Float64Array>;

/** One braking zone cut from a log, with a margin before and after it. */
export interface LoggedZone {
  /** From 1, in the order of the log. */
  readonly number: number;
  readonly lap: number | null;
  /** Line of the file in which the brake goes on. */
  readonly line: number;
  /** Seconds from the first row of the log to there; the zone's own times count from there. */
  readonly startS: number;
  readonly gaps: readonly Gap[];
  readonly samples: ZoneSamples;
  /**
   * What was logged after that until the next brake, a gap or six seconds, on the same clock, without brake and lap and
   * at 25 Hz at most: the way out of the corner. Null where there is nothing, and in files of before it was kept.
   */
  readonly after: ZoneSamples | null;
}
