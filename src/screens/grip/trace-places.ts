import type { GripTrace } from '../../target/derive/grip-trace.ts';

/** Index of the place nearest to `sM`; null where the trace does not come there. */
export function nearestIndex({ placeM }: Pick<GripTrace, 'placeM'>, sM: number): number | null {
  const after = placeM.findIndex((at) => at >= sM);
  if (after < 0) return null;
  if (after === 0) return placeM[0] === sM ? 0 : null;
  return sM - placeM[after - 1]! < placeM[after]! - sM ? after - 1 : after;
}

/** Grip that the axle which uses more of it uses at an entry of the trace, and which axle that is. */
export function useAt(
  { frontUse, rearUse }: Pick<GripTrace, 'frontUse' | 'rearUse'>,
  index: number,
): { readonly use: number; readonly axle: 'front' | 'rear' } {
  const [front, rear] = [frontUse[index]!, rearUse[index]!];
  return front >= rear ? { use: front, axle: 'front' } : { use: rear, axle: 'rear' };
}

/** Where most of the grip is used; null for an empty trace. */
export function mostUsed(trace: GripTrace): number | null {
  let best: number | null = null;
  for (let i = 0; i < trace.placeM.length; i++)
    if (best === null || useAt(trace, i).use > useAt(trace, best).use) best = i;
  return best;
}
