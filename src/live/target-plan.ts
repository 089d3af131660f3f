import { apexesM } from '../corner/apex.ts';
import { type PlanPoint, planView } from '../corner/plan-view.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import type { LivePlan } from './live-view.ts';

type PlanMark = LivePlan['marks'][number];

const ROAD_STEP_M = 2;
/** An apex closer to the slowest point than this has no letter of its own, m. */
const SAME_PLACE_M = 3;

/** The road from above, from the target's brake point on; in front of turn-in it is straight. */
export function roadFromAbove({ corner: { path }, zone }: DerivedTarget): readonly PlanPoint[] {
  const fromM = Math.min(zone.brakePointM, 0);
  return [{ sM: fromM, xM: fromM, yM: 0, headingRad: 0 }, ...planView(path, ROAD_STEP_M)];
}

/** What the target and the road have where, in driving order. */
export function targetMarks({ corner, zone, keys }: DerivedTarget): readonly PlanMark[] {
  const marks: readonly PlanMark[] = [
    { sM: zone.brakePointM, kind: 'target brake point' },
    { sM: keys.startOfRelease.sM, kind: 'target start of release' },
    ...zone.downshifts.map(({ atM }): PlanMark => ({ sM: atM, kind: 'target downshift' })),
    { sM: 0, kind: 'turn-in' },
    { sM: zone.slowestM, kind: 'slowest' },
    ...apexesM(corner.path)
      .filter((sM) => Math.abs(sM - zone.slowestM) > SAME_PLACE_M)
      .map((sM): PlanMark => ({ sM, kind: 'apex' })),
    ...corner.bumps.map(({ atM }): PlanMark => ({ sM: atM, kind: 'bump' })),
  ];
  return marks.toSorted((a, b) => a.sM - b.sM);
}

/** The corner from above as the target drives it. */
export function targetPlan(derived: DerivedTarget): LivePlan {
  return { road: roadFromAbove(derived), marks: targetMarks(derived) };
}
