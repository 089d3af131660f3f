import type { CornerBump } from '../corner/corner.ts';

/** Share of the wheel load that bumps take away at a place: half a sine over the length of each. */
export function bumpLossAt(bumps: readonly CornerBump[], sM: number): number {
  let loss = 0;
  for (const { atM, lengthM, depth } of bumps)
    if (sM > atM && sM < atM + lengthM)
      loss = Math.max(loss, depth * Math.sin((Math.PI * (sM - atM)) / lengthM));
  return loss;
}
