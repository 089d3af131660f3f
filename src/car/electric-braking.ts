/** A motor that brakes the rear axle while the driver brakes. */
export interface ElectricBraking {
  /** Largest torque at the rear axle, both wheels together, N m. */
  readonly torqueNm: number;
  /** Largest power it takes up, W. */
  readonly powerW: number;
  /** Speed below which it fades, and at which nothing is left of it, m/s. */
  readonly fadeFromMps: number;
  readonly fadeOutMps: number;
}

/**
 * Braking force of the motor at the rear axle, N: the smaller of torque over wheel radius and power over speed, fading
 * linearly between the two speeds. Null is no motor, or one whose battery is full.
 */
export function electricBrakingN(
  electric: ElectricBraking | null,
  speedMps: number,
  wheelRadiusM: number,
): number {
  if (electric === null || speedMps <= electric.fadeOutMps) return 0;
  const capN = Math.min(electric.torqueNm / wheelRadiusM, electric.powerW / speedMps);
  const share = (speedMps - electric.fadeOutMps) / (electric.fadeFromMps - electric.fadeOutMps);
  return capN * Math.min(1, share);
}
