import type { Axles } from './chassis.ts';
import { behindValvePa, type RearValve } from './rear-valve.ts';

/** One axle's brakes, both wheels alike. */
export interface AxleBrake {
  readonly masterCylinderAreaM2: number;
  /** Pistons of ONE side of an opposed caliper, or the piston of a sliding one. */
  readonly pistonAreaM2: number;
  readonly padFriction: number;
  readonly effectiveRadiusM: number;
  readonly wheelRadiusM: number;
}

/**
 * Two-circuit hydraulic brakes from foot to road, quasi-static: line delay, seal hysteresis, pad knock-back and flex
 * are left out.
 */
export interface Brakes {
  readonly pedalRatio: number;
  /** Share of the push-rod force that arrives, 0.8..1. */
  readonly pedalEfficiency: number;
  /** Share of the push-rod force on the front master cylinder, 0..1. */
  readonly balanceBarFront: number;
  /** Line pressure at which the pads touch, Pa. */
  readonly pushOutPa: number;
  /** Null without a proportioning valve. */
  readonly rearValve: RearValve | null;
  readonly front: AxleBrake;
  readonly rear: AxleBrake;
}

/** Line pressures for a pedal force, Pa, the rear one behind its valve. */
export function linePressuresPa(brakes: Brakes, pedalForceN: number): Axles {
  const rodN = pedalForceN * brakes.pedalRatio * brakes.pedalEfficiency;
  return {
    front: (brakes.balanceBarFront * rodN) / brakes.front.masterCylinderAreaM2,
    rear: behindValvePa(
      brakes.rearValve,
      ((1 - brakes.balanceBarFront) * rodN) / brakes.rear.masterCylinderAreaM2,
    ),
  };
}

/** Pedal force that makes a front line pressure, N; the inverse of `linePressuresPa`. */
export function pedalForceN(brakes: Brakes, frontPressurePa: number): number {
  const rodN = (frontPressurePa * brakes.front.masterCylinderAreaM2) / brakes.balanceBarFront;
  return rodN / (brakes.pedalRatio * brakes.pedalEfficiency);
}

/**
 * Brake torque of one wheel, N m: two pad faces, pistons of one side.
 * @source Limpert, Brake Design and Safety, SAE, ch. 5; Gillespie, ch. 3
 */
export function wheelTorqueNm(brake: AxleBrake, pressurePa: number, pushOutPa: number): number {
  const clampN = Math.max(0, pressurePa - pushOutPa) * brake.pistonAreaM2;
  return 2 * brake.padFriction * clampN * brake.effectiveRadiusM;
}

/** Brake force of each axle at the road, N, while the wheels roll. */
export function axleForcesN(brakes: Brakes, pressures: Axles): Axles {
  return {
    front:
      (2 * wheelTorqueNm(brakes.front, pressures.front, brakes.pushOutPa)) /
      brakes.front.wheelRadiusM,
    rear:
      (2 * wheelTorqueNm(brakes.rear, pressures.rear, brakes.pushOutPa)) / brakes.rear.wheelRadiusM,
  };
}

/** Road force of one axle per newton of push-rod force on its master cylinder, push-out left out. */
function gain({
  masterCylinderAreaM2,
  pistonAreaM2,
  padFriction,
  effectiveRadiusM,
  wheelRadiusM,
}: AxleBrake): number {
  return (
    (4 * padFriction * pistonAreaM2 * effectiveRadiusM) / (masterCylinderAreaM2 * wheelRadiusM)
  );
}

/** Share of the friction-brake force on the front axle, 0..1, once the pads touch and below the valve's knee. */
export function frontBrakeShare(brakes: Brakes): number {
  const front = brakes.balanceBarFront * gain(brakes.front);
  const rear = (1 - brakes.balanceBarFront) * gain(brakes.rear);
  return front / (front + rear);
}

/** Area of a round piston, m^2. */
export function circleAreaM2(diameterM: number): number {
  return (Math.PI * diameterM * diameterM) / 4;
}

/** Effective radius for uniform pressure on a ring of pad, m (uniform wear gives the mean radius). */
export function uniformPressureRadiusM(innerM: number, outerM: number): number {
  return ((2 / 3) * (outerM ** 3 - innerM ** 3)) / (outerM ** 2 - innerM ** 2);
}
