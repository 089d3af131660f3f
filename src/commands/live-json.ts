import type { GripEvent, LiveMeasures, ScoredShift } from '../score/live-measures.ts';

/** What the live car adds to an outcome, as `--json` prints it. Places are metres from turn-in, negative before it. */
export function liveJson(live: LiveMeasures): object {
  return {
    brake_point_error_m: live.brakePointErrorM,
    brake_point_error_s: live.brakePointErrorS,
    slowest_speed_mps: live.slowestSpeedMps,
    slowest_speed_error_mps: live.slowestSpeedErrorMps,
    start_of_release_error_m: live.startOfReleaseErrorM,
    release_speed_error_mps: live.releaseSpeedErrorMps,
    apex_level: live.apexLevel,
    apex_error_level: live.apexLevelError,
    grip_use_share: live.gripUse,
    lock_ups: live.lockUps.map(gripEventJson),
    anti_lock: live.antiLock.map(gripEventJson),
    locked_s: live.lockedS,
    anti_lock_after_turn_in_s: live.antiLockTurnedS,
    lengthened_m: live.lengthenedM,
    shifts: live.shifts.map(shiftJson),
    missed_downshifts_count: live.missedDownshifts,
    time_lost_s: live.timeLostS,
    turn_in_error_m: live.turnInErrorM,
    steering_ratio: live.steeringRatio,
  };
}

function gripEventJson({ axle, fromM, toM, fromS, toS }: GripEvent): object {
  return { axle, from_m: fromM, to_m: toM, from_s: fromS, to_s: toS };
}

function shiftJson({ fromGear, toGear, atM, earliestM, verdict, rpm }: ScoredShift): object {
  return {
    from_gear: fromGear,
    to_gear: toGear,
    at_m: atM,
    earliest_m: earliestM,
    verdict,
    engine_rpm: rpm,
  };
}
