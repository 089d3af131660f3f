import type { AppliedZone } from './zone-points.ts';

/**
 * How far a zone is from what it was before, m: by how much its brake point has moved, or the area between the two brake
 * forces where that is more, over the largest force. A force that jumps somewhere counts by how far the jump has moved.
 */
export function movedM(before: AppliedZone, zone: AppliedZone): number {
  const points = zone.profile.filter(({ sM }) => sM >= zone.brakePointM);
  let areaNm = 0;
  let mostN = 0;
  points.forEach(({ sM, brakeForceN }, i) => {
    const widthM = ((points[i + 1]?.sM ?? sM) - (points[i - 1]?.sM ?? sM)) / 2;
    areaNm += widthM * Math.abs(brakeForceN - before.curve.brakeForceN(sM));
    mostN = Math.max(mostN, brakeForceN);
  });
  return Math.max(Math.abs(zone.brakePointM - before.brakePointM), mostN > 0 ? areaNm / mostN : 0);
}
