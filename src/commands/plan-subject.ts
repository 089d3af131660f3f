import type { LiveCarZone, PlanZone } from '../drill/plan/practice-plan.ts';
import { findCorner } from './corner-files.ts';
import {
  carIn,
  type PlanSubject,
  type PlanZoneSubject,
  type ZoneSubject,
} from './drill-subject.ts';
import { findPlan } from './plan-files.ts';
import { findTarget } from './target-files.ts';

/** A plan with everything it names. @throws Problem for a plan with problems or a name of nothing */
export async function planSubject(idOrPath: string, dataDir: string): Promise<PlanSubject> {
  const plan = await findPlan(idOrPath, dataDir);
  const found = (zones: readonly PlanZone[]) =>
    Promise.all(zones.map((zone) => zoneSubject(zone, dataDir)));
  return {
    kind: 'plan',
    plan,
    zones: await found(plan.zones),
    carryOver: await found(plan.carryOver?.zones ?? []),
  };
}

async function zoneSubject(zone: PlanZone, dataDir: string): Promise<PlanZoneSubject> {
  if (zone.kind === 'live car') return { subject: await liveSubject(zone, dataDir), live: null };
  const target = await findTarget(zone.target, dataDir);
  const live = zone.live === null ? null : await liveSubject(zone.live, dataDir);
  return { subject: { kind: 'target', target }, live };
}

async function liveSubject(
  { corner, car, variant }: LiveCarZone,
  dataDir: string,
): Promise<Extract<ZoneSubject, { kind: 'car' }>> {
  return carIn(await findCorner(corner, dataDir), { car, variant }, dataDir);
}
