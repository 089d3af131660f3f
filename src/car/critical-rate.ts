import { type Chassis, wheelbaseM } from './chassis.ts';

/**
 * Braking rate in g at which both axles lock together; the front locks first below it, the rear above.
 * @source Gillespie, Fundamentals of Vehicle Dynamics, ch. 3
 */
export function criticalRateG(chassis: Chassis, frontShare: number): number {
  return (frontShare * wheelbaseM(chassis) - chassis.cgToRearM) / chassis.cgHeightM;
}
