/** What decides how a wheel locks and comes back. */
export interface Wheel {
  /** One wheel with tyre, disc and hub about its axis, kg m^2. */
  readonly inertiaKgm2: number;
  /** Friction of the locked, sliding tyre over the most it gives while it turns, 0..1. */
  readonly slidingShare: number;
}

/**
 * For car files that do not say.
 * @source sliding over peak friction 0.75 to 0.95: Gillespie, Fundamentals of Vehicle Dynamics, ch. 10; Milliken and
 *   Milliken, Race Car Vehicle Dynamics, ch. 2. The inertia is a 20 kg wheel of 0.33 m, its mass at 0.75 of the
 *   radius (common practice, no source).
 */
export const USUAL_WHEEL: Wheel = { inertiaKgm2: 1.2, slidingShare: 0.8 };
