import { type Knot, monotoneCubic } from '../curve/monotone-cubic.ts';

/** How the release runs from its start to brake off, named by its mathematics. */
export type ReleaseShape =
  | { readonly kind: 'linear' }
  /** `(1 - u)^exponent`: above 1 quick first and gentle last, below 1 the other way round. */
  | { readonly kind: 'power-law'; readonly exponent: number }
  /** Decay by `e^eFolds` over the release, lowered so that it ends at zero. */
  | { readonly kind: 'exponential'; readonly eFolds: number }
  | { readonly kind: 'raised-cosine' }
  /** Two straight lines that meet at a corner. */
  | { readonly kind: 'two-stage'; readonly corner: Knot }
  /** Monotone cubic through free knots; the ends (0, 1) and (1, 0) are added. */
  | { readonly kind: 'knots'; readonly knots: readonly Knot[] };

/**
 * The share of the level that is left at `u`: 1 at 0, the start of release, and 0 at 1, brake off. Knots and
 * corners are given in the same two shares. `u` is a share of time or of distance, as the target's domain says.
 */
export function releaseShare(shape: ReleaseShape): (u: number) => number {
  switch (shape.kind) {
    case 'linear':
      return (u) => 1 - u;
    case 'power-law':
      return (u) => (1 - u) ** shape.exponent;
    case 'exponential':
      return exponentialShare(shape.eFolds);
    case 'raised-cosine':
      return (u) => (1 + Math.cos(Math.PI * u)) / 2;
    case 'two-stage':
      return twoStageShare(shape.corner);
    case 'knots':
      return monotoneCubic([{ x: 0, y: 1 }, ...shape.knots, { x: 1, y: 0 }]);
  }
}

function exponentialShare(eFolds: number): (u: number) => number {
  const rest = Math.exp(-eFolds);
  return (u) => (Math.exp(-eFolds * u) - rest) / (1 - rest);
}

function twoStageShare(corner: Knot): (u: number) => number {
  return (u) =>
    u < corner.x ? 1 - ((1 - corner.y) * u) / corner.x : (corner.y * (1 - u)) / (1 - corner.x);
}
