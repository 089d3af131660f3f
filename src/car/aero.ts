import type { Axles } from './chassis.ts';

/** Air forces with constant coefficients: what pitch and ride height do to them is left out. */
export interface Aero {
  /** Drag coefficient times frontal area, m^2. */
  readonly dragAreaM2: number;
  /** Downforce coefficient times area, m^2, positive pressing down. */
  readonly downforceAreaM2: number;
  /** Share of the downforce on the front axle, 0..1. */
  readonly frontShare: number;
  readonly airDensityKgpm3: number;
}

export function dragN(aero: Aero, speedMps: number): number {
  return 0.5 * aero.airDensityKgpm3 * aero.dragAreaM2 * speedMps * speedMps;
}

/** Downforce by axle, N. */
export function downforceN(aero: Aero, speedMps: number): Axles {
  const total = 0.5 * aero.airDensityKgpm3 * aero.downforceAreaM2 * speedMps * speedMps;
  return { front: total * aero.frontShare, rear: total * (1 - aero.frontShare) };
}
