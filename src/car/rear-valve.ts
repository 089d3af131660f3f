/** A proportioning valve in the rear circuit: bias over pressure. */
export interface RearValve {
  /** Pressure up to which the rear circuit gets all of it, Pa. */
  readonly kneePa: number;
  /** Share of the pressure above the knee that passes, 0..1; 0.3 to 0.5 is usual. */
  readonly slope: number;
}

/** Pressure behind the valve, Pa: p up to the knee, then knee + slope (p - knee). Null is no valve. */
export function behindValvePa(valve: RearValve | null, pressurePa: number): number {
  if (valve === null || pressurePa <= valve.kneePa) return pressurePa;
  return valve.kneePa + valve.slope * (pressurePa - valve.kneePa);
}

/** Pressure in front of the valve for one behind it, Pa; the inverse of `behindValvePa`. */
export function beforeValvePa(valve: RearValve | null, pressurePa: number): number {
  if (valve === null || pressurePa <= valve.kneePa) return pressurePa;
  return valve.slope === 0
    ? Number.POSITIVE_INFINITY
    : valve.kneePa + (pressurePa - valve.kneePa) / valve.slope;
}
