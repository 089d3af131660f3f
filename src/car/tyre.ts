/** Friction of a tyre that falls with load, linear about a reference load. */
export interface Tyre {
  readonly longitudinalFriction: number;
  readonly lateralFriction: number;
  /** Load at which the frictions hold, N per tyre. */
  readonly referenceLoadN: number;
  /** Relative change of friction for a doubling of the reference load, about -0.05 to -0.15; 0 is none. */
  readonly loadSensitivity: number;
}

const LEAST_FACTOR = 0.1;

/** Factor on the frictions at a tyre load: 1 + eps (F - F0) / F0, never below a tenth. */
export function frictionFactor({ loadSensitivity, referenceLoadN }: Tyre, loadN: number): number {
  return Math.max(LEAST_FACTOR, 1 + (loadSensitivity * (loadN - referenceLoadN)) / referenceLoadN);
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

/**
 * What an axle carries at a friction of 1, N: its load times the factor on its frictions. Below no load it goes on as a
 * line, so that its tangents stay above it there as well.
 */
export function axleGripN(tyre: Tyre, axleLoadN: number, lateralTransferN: number): number {
  return axleLoadN * axleFrictionFactor(tyre, axleLoadN, lateralTransferN);
}

/** How much more an axle carries for a newton more of load. */
export function axleGripSlope(tyre: Tyre, axleLoadN: number, lateralTransferN: number): number {
  if (axleLoadN <= 0) return frictionFactor(tyre, 0);
  if (lateralTransferN >= axleLoadN / 2) return tyreGripSlope(tyre, axleLoadN);
  const outer = axleLoadN / 2 + lateralTransferN;
  const inner = axleLoadN / 2 - lateralTransferN;
  return (tyreGripSlope(tyre, outer) + tyreGripSlope(tyre, inner)) / 2;
}

/** Slope of the load times its factor: 1 - eps + 2 eps F / F0, or the least factor where that holds. */
function tyreGripSlope(tyre: Tyre, loadN: number): number {
  const factor = frictionFactor(tyre, loadN);
  return factor > LEAST_FACTOR ? 2 * factor - 1 + tyre.loadSensitivity : LEAST_FACTOR;
}
