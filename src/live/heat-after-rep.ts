import { cooledFor, type HeatState, heatedBy, startHeat } from '../car/heat-state.ts';
import type { LiveRun } from './live-run.ts';
import type { LiveZone } from './live-zone.ts';

/**
 * Temperatures of discs and pads when the next rep of a stint begins: heated by what the brakes of each axle really did,
 * then cooled by the air for the time between the reps.
 *
 * @param gapS from the end of this rep to the start of the next
 * @param speedMps how fast the car goes in between; halfway between slowest point and approach where it is left out
 * @source Limpert, Brake Design and Safety, ch. 3 (repeated braking)
 */
export function heatAfterRep(
  zone: LiveZone,
  { end }: LiveRun,
  gapS: number,
  speedMps: number = betweenMps(zone),
): HeatState {
  const heated = heatedBy(zone.car, startHeat(zone.car), end.workJ);
  return cooledFor(zone.car, heated, { durationS: gapS, speedMps });
}

function betweenMps({ corner, derived }: LiveZone): number {
  return (corner.approachSpeedMps + derived.keys.slowest.speedMps) / 2;
}
