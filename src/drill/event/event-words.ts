import type { EventSession } from './circuit-event.ts';

/** How far off a day is, for a driver: `in 12 days`. */
export function daysLeftText(daysLeft: number): string {
  if (daysLeft === 0) return 'today';
  if (daysLeft === 1) return 'tomorrow';
  if (daysLeft === -1) return 'yesterday';
  return daysLeft > 0 ? `in ${daysLeft} days` : `${-daysLeft} days ago`;
}

/** How a session is driven, in words. */
export function sessionText({ variant, lateCallShare }: EventSession): string {
  const calls =
    lateCallShare === 0 ? '' : `, a late call on ${Math.round(100 * lateCallShare)} % of the reps`;
  return `${variant === null ? "each sheet's first variant" : variant}${calls}`;
}
