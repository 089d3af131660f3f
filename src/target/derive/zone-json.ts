import { barFromPascals, degreesFromRadians } from '../../units.ts';
import { rounded } from '../rounded.ts';
import type { DerivedTarget } from './derive-target.ts';
import type { Downshift } from './downshifts.ts';
import { LEFT_OUT } from './left-out.ts';
import type { BumpMargin } from './zone-key-points.ts';
import type { ZonePoint } from './zone-point.ts';

/** A derived target as one JSON object: one array for each quantity, places in metres before the slowest point. */
export function zoneJson(derived: DerivedTarget): Record<string, unknown> {
  const { car, corner, zone, keys, pushEnd, lock, straightBleed } = derived;
  return {
    car: car.id,
    corner: corner.id,
    variant: corner.variant,
    model: zone.model,
    ...columns(zone.points),
    key_points: {
      brake_point: keyPoint(keys.brakePoint),
      peak: keyPoint(keys.peak),
      start_of_release: keyPoint(keys.startOfRelease),
      turn_in: keyPoint(keys.turnIn),
      apex: keyPoint(keys.apex),
      slowest: keyPoint(keys.slowest),
    },
    push_end: pushEnd && keyPoint(pushEnd),
    lock_order: {
      first_axle: lock.axle,
      margin_g: lock.marginG === null ? null : rounded(lock.marginG),
      turns_at_g: rounded(lock.turnsAtG),
    },
    straight_bleed: {
      from_distance_m: rounded(straightBleed.from.distanceM),
      to_distance_m: rounded(straightBleed.to.distanceM),
      pressure_front_bar: rounded(barFromPascals(straightBleed.pressurePa)),
      level: rounded(straightBleed.level),
    },
    downshifts: zone.downshifts.map((shift) => downshift(shift, zone.slowestM)),
    bumps: derived.bumps.map((margin) => bump(margin, zone.slowestM)),
    too_fast_mps: rounded(zone.tooFastMps),
    unsettled_m: rounded(zone.unsettledM),
    duration_s: rounded(zone.durationS),
    rises_again_level: rounded(derived.risesAgainLevel),
    foot_loss_s: rounded(zone.footLossS()),
    full_scale_pedal_force_n: car.fullScalePedalForceN,
    left_out: LEFT_OUT,
  };
}

function columns(points: readonly ZonePoint[]): Record<string, readonly (number | string)[]> {
  const column = (of: (point: ZonePoint) => number): number[] =>
    points.map((point) => rounded(of(point)));
  return {
    distance_m: column(({ distanceM }) => distanceM),
    time_s: column(({ timeS }) => timeS),
    speed_mps: column(({ speedMps }) => speedMps),
    level: column(({ level }) => level),
    pressure_front_bar: column(({ pressureFrontPa }) => barFromPascals(pressureFrontPa)),
    pressure_rear_bar: column(({ pressureRearPa }) => barFromPascals(pressureRearPa)),
    pedal_force_n: column(({ pedalForceN }) => pedalForceN),
    steering_deg: column(({ steeringRad }) => degreesFromRadians(steeringRad)),
    accel_x_mps2: column(({ accelXMps2 }) => accelXMps2),
    accel_y_mps2: column(({ accelYMps2 }) => accelYMps2),
    front_utilization: column(({ frontUse }) => frontUse),
    rear_utilization: column(({ rearUse }) => rearUse),
    limiter: points.map(({ limiter }) => limiter),
    gear: points.map(({ gear }) => gear),
  };
}

function keyPoint(point: ZonePoint): Record<string, number> {
  return {
    distance_m: rounded(point.distanceM),
    time_s: rounded(point.timeS),
    speed_mps: rounded(point.speedMps),
    level: rounded(point.level),
    pressure_front_bar: rounded(barFromPascals(point.pressureFrontPa)),
    pedal_force_n: rounded(point.pedalForceN),
  };
}

function downshift(shift: Downshift, slowestM: number): Record<string, unknown> {
  return {
    from_gear: shift.fromGear,
    to_gear: shift.toGear,
    distance_m: rounded(slowestM - shift.atM),
    earliest_distance_m: shift.earliestM === null ? null : rounded(slowestM - shift.earliestM),
    speed_mps: rounded(shift.speedMps),
    engine_rpm: rounded(shift.rpm),
    rear_utilization: rounded(shift.rearUse),
    rear_margin: rounded(1 - shift.rearUse),
    ease_share: shift.ease,
    safe: shift.safe,
  };
}

function bump(
  { bump: { atM, lengthM, depth }, rearUse, ease }: BumpMargin,
  slowestM: number,
): unknown {
  return {
    distance_m: rounded(slowestM - atM),
    length_m: lengthM,
    load_loss_share: depth,
    rear_utilization: Number.isFinite(rearUse) ? rounded(rearUse) : null,
    rear_margin: Number.isFinite(rearUse) ? rounded(1 - rearUse) : null,
    ease_share: ease,
  };
}
