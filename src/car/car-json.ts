import {
  barFromPascals,
  degreesFromRadians,
  kmhFromMetresPerSecond,
  STANDARD_GRAVITY_MPS2,
} from '../units.ts';
import { frontBrakeShare } from './brakes.ts';
import type { Car } from './car.ts';
import type { CarFile } from './car-file.ts';
import { limitsOverSpeed, topSpeedMps } from './car-limits.ts';
import { wheelbaseM } from './chassis.ts';
import { criticalRateG } from './critical-rate.ts';
import { CAR_LEFT_OUT } from './left-out.ts';
import type { StraightLimit } from './straight-limit.ts';

const STEPS = 10;

/** A car and its straight-line limits as plain data, every key with its unit. */
export function carJson(file: CarFile, car: Car): Record<string, unknown> {
  return {
    id: car.id,
    name: car.name,
    kind: file.kind,
    mass_kg: car.chassis.massKg,
    wheelbase_m: wheelbaseM(car.chassis),
    cg_to_rear_axle_m: car.chassis.cgToRearM,
    cg_height_m: car.chassis.cgHeightM,
    front_brake_share: rounded(frontBrakeShare(car.brakes), 4),
    locks_together_at_g: rounded(criticalRateG(car.chassis, frontBrakeShare(car.brakes)), 3),
    pad_friction_front: car.brakes.front.padFriction,
    pad_friction_rear: car.brakes.rear.padFriction,
    full_scale_pedal_force_n: car.fullScalePedalForceN,
    driver_peak_pedal_force_n: car.driver.peakPedalForceN,
    top_speed_kmh: rounded(kmhFromMetresPerSecond(topSpeedMps(car)), 1),
    gears: car.gearbox.ratios.length,
    steering_ratio: car.steeringRatio,
    understeer_deg_per_g: rounded(
      degreesFromRadians(car.understeerRadpMps2) * STANDARD_GRAVITY_MPS2,
      4,
    ),
    pitch_hz: car.pitchHz,
    anti_lock: car.antiLock !== null,
    rear_valve: car.brakes.rearValve !== null,
    hybrid: car.electric !== null,
    limits: limitsOverSpeed(car, STEPS).map((limit) => limitJson(limit, car)),
    left_out: CAR_LEFT_OUT,
  };
}

function limitJson(limit: StraightLimit, car: Car): Record<string, unknown> {
  return {
    speed_mps: rounded(limit.speedMps, 3),
    speed_kmh: rounded(kmhFromMetresPerSecond(limit.speedMps), 2),
    deceleration_g: rounded(limit.decelerationG, 4),
    pedal_force_n: rounded(limit.pedalForceN, 1),
    level: rounded(limit.pedalForceN / car.fullScalePedalForceN, 4),
    pressure_front_bar: rounded(barFromPascals(limit.pressuresPa.front), 2),
    pressure_rear_bar: rounded(barFromPascals(limit.pressuresPa.rear), 2),
    front_share: rounded(limit.frontShare, 4),
    ideal_front_share: rounded(limit.idealFrontShare, 4),
    locks_first: limit.locksFirst,
    margin_g: limit.marginG === null ? null : rounded(limit.marginG, 3),
  };
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
