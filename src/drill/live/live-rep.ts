import type { HeatState } from '../../car/heat-state.ts';
import type { PlanPoint } from '../../corner/plan-view.ts';
import type { CallWord, LiveZone } from '../../live/live-zone.ts';
import { roadFromAbove } from '../../live/target-plan.ts';
import type { RepPhase } from '../plan/practice-plan.ts';
import { type LaneTargets, laneTargets } from './lane-targets.ts';
import { drawCall, possibleCalls } from './late-calls.ts';
import type { LivePlan } from './live-plan.ts';
import { zoneOf } from './zone-of.ts';

/** The zone of one rep and what follows from it, worked out once, before the rep. */
export interface LiveRep {
  readonly zone: LiveZone;
  /** What the driver is shown along the road. */
  readonly lanes: LaneTargets;
  /** The same before a late call; null without one. */
  readonly lanesBefore: LaneTargets | null;
  /** The road from above, from the target's brake point on. */
  readonly road: readonly PlanPoint[];
  /** Temperatures it begins with; null are the car's own. */
  readonly heat: HeatState | null;
  /** The same zone, late call included, at the car's start temperatures. */
  readonly cold: LiveZone;
}

/** The first rep of a stint, or any rep outside one. */
export function firstLiveRep(plan: LivePlan): LiveRep {
  const zone = zoneOf(plan, null, null);
  return liveRep(zone, null, zone);
}

/** The zone of the next attempt. What has not changed since the last one is not worked out again. */
export function nextLiveRep(
  plan: LivePlan,
  last: LiveRep,
  heat: HeatState | null,
  call: CallWord | null,
): LiveRep {
  const isSameCall = (last.zone.call?.word ?? null) === call;
  if (last.heat === heat && isSameCall) return last;
  const cold = isSameCall ? last.cold : zoneOf(plan, null, call);
  return liveRep(heat === null ? cold : zoneOf(plan, heat, call), heat, cold);
}

function liveRep(zone: LiveZone, heat: HeatState | null, cold: LiveZone): LiveRep {
  return {
    zone,
    lanes: laneTargets(zone.derived),
    lanesBefore: zone.call === null ? null : laneTargets(zone.call.before),
    road: roadFromAbove(zone.derived),
    heat,
    cold,
  };
}

/** The late call of an attempt; only the reps of the blocks have any. */
export function callOf(
  { sheet, variant, callShare }: LivePlan,
  seed: number,
  number: number,
  phase: RepPhase,
): CallWord | null {
  if (phase !== 'block') return null;
  return drawCall(possibleCalls(sheet, variant), callShare, seed, number);
}
