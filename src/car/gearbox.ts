import { radiansPerSecondFromRpm, rpmFromRadiansPerSecond } from '../units.ts';

/** Gears between engine and driven wheels. */
export interface Gearbox {
  /** Ratio by gear, first gear first, falling. */
  readonly ratios: readonly number[];
  readonly finalDrive: number;
  /** Share of the power that passes, 0..1. */
  readonly efficiency: number;
  readonly drivenWheelRadiusM: number;
  readonly revLimitRpm: number;
  /** Time a downshift takes, s. */
  readonly shiftS: number;
  /** True where the engine is brought up to speed before the clutch closes. */
  readonly blip: boolean;
}

/** Torque against engine speed, rising speeds. */
export type TorqueCurve = readonly { readonly rpm: number; readonly torqueNm: number }[];

/** Torque of the engine by its speed, and what turns with it. */
export interface Engine {
  /** Full throttle. */
  readonly driveTorque: TorqueCurve;
  /** Closed throttle, as a positive number. */
  readonly brakingTorque: TorqueCurve;
  readonly inertiaKgm2: number;
}

/** Overall ratio of a gear. @throws RangeError for a gear the box does not have */
export function overallRatio({ ratios, finalDrive }: Gearbox, gear: number): number {
  const ratio = ratios[gear - 1];
  if (ratio === undefined) throw new RangeError(`gear ${gear} of ${ratios.length}`);
  return ratio * finalDrive;
}

export function engineRpm(gearbox: Gearbox, gear: number, speedMps: number): number {
  return rpmFromRadiansPerSecond(
    (speedMps / gearbox.drivenWheelRadiusM) * overallRatio(gearbox, gear),
  );
}

/** Highest road speed a gear takes without over-revving, m/s. */
export function overRevSpeedMps(gearbox: Gearbox, gear: number): number {
  return (
    (radiansPerSecondFromRpm(gearbox.revLimitRpm) * gearbox.drivenWheelRadiusM) /
    overallRatio(gearbox, gear)
  );
}

/** Braking force of the engine at the driven axle, N. A drag torque is divided by the efficiency, not multiplied. */
export function engineBrakingN(gearbox: Gearbox, gear: number, torqueNm: number): number {
  return (
    (torqueNm * overallRatio(gearbox, gear)) / (gearbox.efficiency * gearbox.drivenWheelRadiusM)
  );
}

/** Closed-throttle torque at an engine speed, N m, linear between the given points and held outside them. */
export function brakingTorqueNm({ brakingTorque }: Engine, rpm: number): number {
  return torqueAt(brakingTorque, rpm);
}

/**
 * Driving force at the driven axles with full throttle in a gear, N: torque times overall ratio times efficiency over
 * the wheel radius. 0 beyond the rev limit.
 */
export function driveForceN(
  gearbox: Gearbox,
  engine: Engine,
  gear: number,
  speedMps: number,
): number {
  const rpm = engineRpm(gearbox, gear, speedMps);
  if (rpm > gearbox.revLimitRpm) return 0;
  const torqueNm = torqueAt(engine.driveTorque, rpm);
  return (torqueNm * overallRatio(gearbox, gear) * gearbox.efficiency) / gearbox.drivenWheelRadiusM;
}

/** Asked for at every step: no search by a function. */
function torqueAt(curve: TorqueCurve, rpm: number): number {
  let left = curve[0];
  if (left === undefined || rpm <= left.rpm) return left?.torqueNm ?? 0;
  for (const right of curve) {
    if (rpm <= right.rpm) {
      const share = (rpm - left.rpm) / (right.rpm - left.rpm);
      return left.torqueNm + (right.torqueNm - left.torqueNm) * share;
    }
    left = right;
  }
  return left.torqueNm;
}

/**
 * Braking force at the driven axle while the clutch drags the engine up to the lower gear's speed, N: inertia times
 * angular acceleration times the overall ratio over the wheel radius. 0 with a blip.
 */
export function unmatchedShiftN(
  gearbox: Gearbox,
  engine: Engine,
  shift: {
    readonly fromGear: number;
    readonly toGear: number;
    readonly speedMps: number;
    readonly overS: number;
  },
): number {
  if (gearbox.blip) return 0;
  const rise =
    radiansPerSecondFromRpm(engineRpm(gearbox, shift.toGear, shift.speedMps)) -
    radiansPerSecondFromRpm(engineRpm(gearbox, shift.fromGear, shift.speedMps));
  const torqueNm = (engine.inertiaKgm2 * Math.max(0, rise)) / shift.overS;
  return (torqueNm * overallRatio(gearbox, shift.toGear)) / gearbox.drivenWheelRadiusM;
}
