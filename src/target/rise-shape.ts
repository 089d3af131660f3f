/** How the level gets from one value to another, named by its mathematics. */
export type RiseShape = 'minimum-jerk' | 'linear' | 'raised-cosine';

export const RISE_SHAPES: readonly RiseShape[] = ['minimum-jerk', 'linear', 'raised-cosine'];

/**
 * The share reached at `u`, both 0..1, rising. Minimum jerk is the point-to-point movement with the least mean
 * squared jerk (Flash and Hogan, J. Neurosci. 5 (1985) 1688-1703), which a quick voluntary push comes close to.
 */
export function riseShare(shape: RiseShape): (u: number) => number {
  switch (shape) {
    case 'linear':
      return (u) => u;
    case 'minimum-jerk':
      return (u) => u * u * u * (10 + u * (6 * u - 15));
    case 'raised-cosine':
      return (u) => (1 - Math.cos(Math.PI * u)) / 2;
  }
}
