import type { LoggedZone } from './logged-zone.ts';

/** What the speed signal lost in a zone, and what the deceleration signal says it should have. */
export interface SpeedCheck {
  readonly measuredMps: number;
  readonly integratedMps: number;
  /** Within a tenth and 1 m/s: slope, drift and the filters of loggers explain so much. */
  readonly plausible: boolean;
}

/**
 * Speed against the integral of longitudinal acceleration (trapezes) from the brake to the slowest sample; null where
 * the log lacks one of them.
 */
export function speedCheck({ samples }: LoggedZone): SpeedCheck | null {
  const speed = samples.get('speed');
  const acceleration = samples.get('longitudinal-acceleration');
  if (speed === undefined || acceleration === undefined) return null;
  const timeS = samples.get('time')!;
  const from = Math.max(
    0,
    timeS.findIndex((time) => time >= 0),
  );
  let slowest = from;
  for (let i = from; i < speed.length; i++) if (speed[i]! < speed[slowest]!) slowest = i;
  let integratedMps = 0;
  for (let i = from + 1; i <= slowest; i++)
    integratedMps -= ((acceleration[i]! + acceleration[i - 1]!) / 2) * (timeS[i]! - timeS[i - 1]!);
  const measuredMps = speed[from]! - speed[slowest]!;
  const plausible = Math.abs(measuredMps - integratedMps) <= 1 + 0.1 * Math.abs(measuredMps);
  return { measuredMps, integratedMps, plausible };
}
