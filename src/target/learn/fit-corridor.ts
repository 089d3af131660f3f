import type { Knot } from '../../curve/monotone-cubic.ts';
import { DEFAULT_CORRIDOR } from '../target-spec.ts';

/** The corridor of a learned target, and what became of the band it was made for. */
export interface FittedCorridor {
  /**
   * `default` where the reps are closer to each other than the default corridor, which is kept then; `widened` where
   * it holds the band everywhere; `cut` where the band is wider than a corridor may be.
   */
  readonly kind: 'default' | 'widened' | 'cut';
  /** Half widths that widen the default corridor; empty where it is kept. */
  readonly knots: readonly Knot[];
}

/** Widest half width that a target file lets through. */
const WIDEST_CORRIDOR = 0.5;
const CELLS = 16;

/**
 * A corridor in few knots that is nowhere narrower than the band and never narrower than the default. A knot is as
 * wide as the band anywhere in the cells beside it: what is drawn between two knots is never narrower than either.
 *
 * @param levels of the curve at equal steps, one after the other from place `startX` on
 * @param band half widths at the same places
 */
export function fitCorridor(
  levels: Float64Array,
  band: Float64Array,
  startX: number,
  stepX: number,
): FittedCorridor {
  const usual = levels.map((level) =>
    Math.max(DEFAULT_CORRIDOR.floorLevel, DEFAULT_CORRIDOR.share * level),
  );
  if (band.every((half, i) => half <= usual[i]!)) return { kind: 'default', knots: [] };
  const last = band.length - 1;
  const places = Array.from({ length: CELLS + 1 }, (_, k) => Math.round((k * last) / CELLS));
  const knots = places.map((place, k) => {
    const beside = band.subarray(places[k - 1] ?? 0, (places[k + 1] ?? last) + 1);
    const half = Math.max(DEFAULT_CORRIDOR.floorLevel, ...beside);
    return { x: startX + place * stepX, y: Math.min(WIDEST_CORRIDOR, half) };
  });
  const isCut = band.some((half) => half > WIDEST_CORRIDOR);
  return { kind: isCut ? 'cut' : 'widened', knots };
}
