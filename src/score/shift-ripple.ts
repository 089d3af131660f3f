import { RATE_HZ } from './scoring-filter.ts';

const REACH_S = 0.15;

/**
 * Pressure ripple around a shift: how far the level strays, from its lowest to its highest, from the straight line
 * that fits it best over 150 ms either side. A steady taper is a straight line and has none.
 *
 * @param at grid point of the shift.
 */
export function rippleAround(levels: Float64Array, at: number): number {
  const reach = REACH_S * RATE_HZ;
  const from = Math.max(0, at - reach);
  const part = levels.subarray(from, Math.min(levels.length, at + reach + 1));
  const middle = (part.length - 1) / 2;
  const mean = part.reduce((sum, level) => sum + level, 0) / part.length;
  let rise = 0;
  let spread = 0;
  part.forEach((level, i) => {
    rise += (i - middle) * (level - mean);
    spread += (i - middle) ** 2;
  });
  const slope = spread > 0 ? rise / spread : 0;
  const strays = part.map((level, i) => level - mean - slope * (i - middle));
  return strays.reduce((a, b) => Math.max(a, b), 0) - strays.reduce((a, b) => Math.min(a, b), 0);
}
