import { type Axles, type Chassis, weightN, wheelbaseM } from './chassis.ts';

/** Front share of brake force at which both axles use the same friction: (b + z h) / L. @source Gillespie, ch. 3 */
export function idealFrontShare(chassis: Chassis, brakingRateG: number): number {
  return (chassis.cgToRearM + brakingRateG * chassis.cgHeightM) / wheelbaseM(chassis);
}

/**
 * Friction used by each axle at a braking rate with a fixed distribution, no air forces: brake force over axle load.
 * @source UN Regulation No. 13-H, annex 5
 */
export function adhesionUtilisation(
  chassis: Chassis,
  frontShare: number,
  brakingRateG: number,
): Axles {
  const { cgToFrontM: a, cgToRearM: b, cgHeightM: h } = chassis;
  const wheelbase = wheelbaseM(chassis);
  return {
    front: (frontShare * brakingRateG * wheelbase) / (b + brakingRateG * h),
    rear: ((1 - frontShare) * brakingRateG * wheelbase) / (a - brakingRateG * h),
  };
}

/** Braking rate in g at which each axle would lock on friction `mu`, no air forces; the smaller one governs. */
export function lockUpRatesG(chassis: Chassis, frontShare: number, mu: number): Axles {
  const { cgToFrontM: a, cgToRearM: b, cgHeightM: h } = chassis;
  const wheelbase = wheelbaseM(chassis);
  return {
    front: (mu * b) / (frontShare * wheelbase - mu * h),
    rear: (mu * a) / ((1 - frontShare) * wheelbase + mu * h),
  };
}

/** Braking rate in g at which both axles lock together; the front locks first below it, the rear above. */
export function criticalRateG(chassis: Chassis, frontShare: number): number {
  return (frontShare * wheelbaseM(chassis) - chassis.cgToRearM) / chassis.cgHeightM;
}

/**
 * Friction-brake force that locks each axle on a straight, N, with downforce and with engine braking on a driven rear
 * axle (drag at the height of the centre of gravity).
 * @source Gillespie, ch. 3, extended by downforce and engine braking on the axle balance
 */
export function lockUpForcesN(
  chassis: Chassis,
  frontShare: number,
  mu: number,
  downforce: Axles = { front: 0, rear: 0 },
  rearEngineBrakingN = 0,
): Axles {
  const { cgToFrontM: a, cgToRearM: b, cgHeightM: h } = chassis;
  const wheelbase = wheelbaseM(chassis);
  const weight = weightN(chassis);
  const transfer = (mu * h) / wheelbase;
  const frontLoad = (weight * b) / wheelbase + downforce.front;
  const rearLoad = (weight * a) / wheelbase + downforce.rear;
  return {
    front: (mu * frontLoad + transfer * rearEngineBrakingN) / (frontShare - transfer),
    rear: (mu * rearLoad - rearEngineBrakingN * (1 + transfer)) / (1 - frontShare + transfer),
  };
}
