import { type Chassis, wheelbaseM } from './chassis.ts';

/** Fuel on board and where its tank sits. */
interface Fuel {
  readonly massKg: number;
  readonly behindFrontAxleM: number;
  readonly heightM: number;
}

/**
 * The chassis with another mass of fuel, the car weighed with `fuel.massKg` on board: mass, and centre of gravity by the
 * balance of moments.
 */
export function withFuel(chassis: Chassis, fuel: Fuel, massKg: number): Chassis {
  const changeKg = massKg - fuel.massKg;
  const totalKg = chassis.massKg + changeKg;
  const mean = (car: number, tank: number): number =>
    (chassis.massKg * car + changeKg * tank) / totalKg;
  const cgToFrontM = mean(chassis.cgToFrontM, fuel.behindFrontAxleM);
  return {
    ...chassis,
    massKg: totalKg,
    cgToFrontM,
    cgToRearM: wheelbaseM(chassis) - cgToFrontM,
    cgHeightM: mean(chassis.cgHeightM, fuel.heightM),
  };
}
