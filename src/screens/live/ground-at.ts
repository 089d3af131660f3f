import type { PlanPoint } from '../../corner/plan-view.ts';
import type { GroundPoint } from './plan-fit.ts';

/** Where a place of the road lies on the ground, straight between the points of the road. */
export function groundAt(road: readonly PlanPoint[], sM: number): GroundPoint {
  const found = road.findIndex((point) => point.sM >= sM);
  const index = Math.max(1, found < 0 ? road.length - 1 : found);
  const [from, to] = [road[index - 1]!, road[index]!];
  const share = (sM - from.sM) / (to.sM - from.sM);
  return { xM: from.xM + share * (to.xM - from.xM), yM: from.yM + share * (to.yM - from.yM) };
}
