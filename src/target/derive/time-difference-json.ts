import { rounded } from '../rounded.ts';
import type { DerivedTarget } from './derive-target.ts';
import { EXIT_LEFT_OUT } from './left-out.ts';
import type { DrivenParts, TimeDifference } from './time-difference.ts';

/** A time difference as plain data: `this`, `other`, and `difference_s` (this minus other), part by part. */
export function timeDifferenceJson(
  { one, other: against, lengthM, beforeApexM, afterApexM }: TimeDifference,
  other: DerivedTarget,
): Record<string, unknown> {
  return {
    against_variant: other.corner.variant,
    against_slowest_gear: other.corner.gears.slowest,
    length_m: rounded(lengthM),
    from_before_apex_m: rounded(beforeApexM),
    to_after_apex_m: rounded(afterApexM),
    this: { ...times(one), ...rest(one) },
    other: { ...times(against), ...rest(against) },
    difference_s: rounded(one.totalS - against.totalS),
    difference: Object.fromEntries(
      Object.entries(times(one)).map(([key, value]) => [
        key,
        rounded(value - (times(against)[key] ?? 0)),
      ]),
    ),
    exit_left_out: EXIT_LEFT_OUT,
  };
}

function times(parts: DrivenParts): Record<string, number> {
  return {
    straight_s: rounded(parts.straightS),
    braking_s: rounded(parts.brakingS),
    corner_exit_s: rounded(parts.cornerExitS),
    exit_straight_s: rounded(parts.exitStraightS),
    total_s: rounded(parts.totalS),
    shifting_s: rounded(parts.shiftingS),
  };
}

function rest({ upshifts, exitSpeedMps }: DrivenParts): Record<string, unknown> {
  return {
    exit_speed_mps: rounded(exitSpeedMps),
    upshifts: upshifts.map(({ fromGear, toGear, speedMps }) => ({
      from_gear: fromGear,
      to_gear: toGear,
      speed_mps: rounded(speedMps),
    })),
  };
}
