/** A wheel that crosses a crest: its load dips as half a sine. */
interface Bump {
  readonly loadN: number;
  /** Deepest loss of load, share of the load, 0..1. */
  readonly depth: number;
  readonly durationS: number;
}

/**
 * How much a braked wheel slows while a bump unloads it, rad/s, when the brake torque is `utilisation` of what the
 * full load would carry. 0 while the spare grip covers the dip: that is why a little less pressure saves the wheel.
 */
export function bumpSlowdownRadps(
  bump: Bump,
  wheel: { readonly radiusM: number; readonly inertiaKgm2: number; readonly mu: number },
  utilisation: number,
): number {
  const spare = 1 - utilisation;
  if (bump.depth <= spare) return 0;
  const theta = Math.asin(spare / bump.depth);
  const scale =
    (wheel.mu * bump.loadN * wheel.radiusM * bump.durationS) / (wheel.inertiaKgm2 * Math.PI);
  return scale * (2 * bump.depth * Math.cos(theta) - spare * (Math.PI - 2 * theta));
}
