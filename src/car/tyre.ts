/** Friction of a tyre that falls with load, linear about a reference load. */
export interface Tyre {
  readonly longitudinalFriction: number;
  readonly lateralFriction: number;
  /** Load at which the frictions hold, N per tyre. */
  readonly referenceLoadN: number;
  /** Relative change of friction for a doubling of the reference load, about -0.05 to -0.15; 0 is none. */
  readonly loadSensitivity: number;
}

/** Factor on the frictions at a tyre load: 1 + eps (F - F0) / F0, never below a tenth. */
export function frictionFactor({ loadSensitivity, referenceLoadN }: Tyre, loadN: number): number {
  return Math.max(0.1, 1 + (loadSensitivity * (loadN - referenceLoadN)) / referenceLoadN);
}

/**
 * Factor on the frictions of an axle whose two tyres share the load unevenly, weighted by their loads. Moving load
 * sideways costs grip because the loaded tyre loses more than the other gains.
 *
 * @param axleLoadN both tyres
 * @param lateralTransferN load moved from the inner to the outer tyre
 */
export function axleFrictionFactor(
  tyre: Tyre,
  axleLoadN: number,
  lateralTransferN: number,
): number {
  if (axleLoadN <= 0) return frictionFactor(tyre, 0);
  const moved = Math.min(Math.abs(lateralTransferN), axleLoadN / 2);
  const outer = axleLoadN / 2 + moved;
  const inner = axleLoadN / 2 - moved;
  return (outer * frictionFactor(tyre, outer) + inner * frictionFactor(tyre, inner)) / axleLoadN;
}
