import type { LiveCarZone, PlanZone } from './practice-plan.ts';

/** A zone as messages and tables name it. */
export function zoneName(zone: PlanZone): string {
  return zone.kind === 'target' ? zone.target : liveZoneName(zone);
}

function liveZoneName({ corner, car, variant }: LiveCarZone): string {
  return `${corner} in ${car}${variant === null ? '' : `, ${variant}`}`;
}
