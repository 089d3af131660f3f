import type { Car } from '../car/car.ts';
import { electricBrakingN } from '../car/electric-braking.ts';
import { brakingTorqueNm, driveForceN, engineBrakingN, engineRpm } from '../car/gearbox.ts';
import type { LiveShift } from './live-car.ts';

/** The gear and the shift under way. Scratch. */
export interface Transmission {
  gear: number;
  shift: LiveShift | null;
  /** Largest use of the rear axle's grip during that shift so far. */
  rearUse: number;
}

/** A clutch further down than this carries nothing. */
const CLUTCH_OPEN = 0.5;
/** Brake level over which a hybrid's motor comes in, so that a trembling foot does not switch it. */
const MOTOR_BLEND_LEVEL = 0.015;

/**
 * Braking force of the engine at the driven axles, N, negative where it drives: between closed-throttle braking and full
 * throttle by the throttle, with what it takes to drag the engine up to speed in an unmatched downshift. Nothing with the
 * clutch down, and nothing during an upshift.
 */
export function engineForceN(
  car: Car,
  { gear, shift }: Transmission,
  { throttle, clutch }: { readonly throttle: number; readonly clutch: number },
  speedMps: number,
): number {
  if (clutch > CLUTCH_OPEN || (shift !== null && shift.toGear > shift.fromGear)) return 0;
  const inGear = shift === null ? gear : shift.toGear;
  const rpm = engineRpm(car.gearbox, inGear, speedMps);
  const closedN = engineBrakingN(car.gearbox, inGear, brakingTorqueNm(car.engine, rpm));
  const openN = throttle > 0 ? driveForceN(car.gearbox, car.engine, inGear, speedMps) : 0;
  return (1 - throttle) * closedN - throttle * openN + (shift === null ? 0 : shift.dragN);
}

/** Braking force of a hybrid's motor at the rear axle while the driver brakes, N. */
export function motorForceN({ electric, chassis }: Car, level: number, speedMps: number): number {
  if (electric === null || level <= 0) return 0;
  const share = Math.min(1, level / MOTOR_BLEND_LEVEL);
  return share * electricBrakingN(electric, speedMps, chassis.rearWheelRadiusM);
}
