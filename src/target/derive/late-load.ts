import { brakeLimit, loadPerNewton } from '../../corner/axle-limit.ts';
import { JUST_ON_N } from '../../corner/braking-model.ts';
import { SPARE_LOAD } from '../../corner/two-axle.ts';
import { wheelForces } from '../../corner/wheel-forces.ts';
import type { ApplicationPoint } from './application.ts';
import { engineBrakingOf, type GearSchedule, type ZoneSetting } from './zone-model.ts';
import type { AppliedZone } from './zone-points.ts';

/** Load by place that the front axle has beyond what the braking of the place accounts for, N; negative where it lacks it. */
export type LateLoad = (sM: number) => number;

const STEP_S = 0.004;

/**
 * The load that is under way on a zone, from where its application has caught up. Pitch follows the braking with a
 * first-order lag: over a release the rear axle carries less than its braking says. The zone is driven at its own speeds
 * with as much brake as the loads of the moment allow; where that is less than its own, it has to be solved again.
 *
 * @param halfWayFrom only half of the way from these is gone; all of it if left out
 */
export function lateLoadOf(
  setting: ZoneSetting,
  zone: AppliedZone,
  schedule: GearSchedule,
  halfWayFrom: LateLoad | null = null,
): LateLoad {
  const places: number[] = [];
  const loads: number[] = [];
  const pitch = pitchAlong(setting, zone, schedule);
  let { sM, transferN } = zone.application[zone.application.length - 1] as ApplicationPoint;
  while (sM < zone.slowestM) {
    const speedMps = zone.curve.speedMps(sM);
    const settledN = pitch.settledN(sM, speedMps, transferN);
    transferN = pitch.after(transferN, settledN);
    places.push(sM);
    const lateN = transferN - settledN;
    loads.push(halfWayFrom === null ? lateN : (lateN + halfWayFrom(sM)) / 2);
    sM += speedMps * STEP_S;
  }
  return between(places, loads);
}

interface PitchAlong {
  /** Load that the braking of a step would move in the end, with what it may be at most. */
  settledN(sM: number, speedMps: number, transferN: number): number;
  /** Load that has arrived after it. */
  after(transferN: number, settledN: number): number;
}

function pitchAlong(
  { car, axles, road }: ZoneSetting,
  { curve, model, profile }: AppliedZone,
  schedule: GearSchedule,
): PitchAlong {
  const { massKg } = car.chassis;
  const engine = engineBrakingOf(car, schedule);
  const perNewton = loadPerNewton(axles);
  const keeps = Math.exp(-2 * Math.PI * car.pitchHz * STEP_S);
  const after = (transferN: number, settledN: number): number =>
    keeps * transferN + (1 - keeps) * settledN;
  const settled = { front: brakeLimit(axles, 'front'), rear: brakeLimit(axles, 'rear') };
  const moving = {
    front: brakeLimit(axles, 'front', perNewton * (1 - keeps)),
    rear: brakeLimit(axles, 'rear', perNewton * (1 - keeps)),
  };
  const ownN = ownForce(profile, curve);
  // Off the brake the tyres hold what the motion shows.
  const heldOffN = (sM: number, w: number, engineN: number): number => {
    const othersN = massKg * model.decelerationMps2(sM, w, JUST_ON_N) - engineN;
    return Math.max(0, Math.min(engineN, massKg * curve.decelerationMps2(sM) - othersN));
  };
  return {
    after,
    settledN: (sM, speedMps, transferN) => {
      const w = speedMps ** 2;
      const engineN = engine(sM, w);
      const { frontLoadN, rearLoadN, frontAcrossN, rearAcrossN } = wheelForces(axles, road, sM, w);
      const keptN = keeps * transferN;
      // The least of the five, each asked for no more than those before it allow.
      let forceN = ownN(sM);
      forceN = settled.front(frontLoadN, frontAcrossN, engineN, forceN);
      forceN = settled.rear(rearLoadN, rearAcrossN, engineN, forceN);
      const arrivedN = (1 + SPARE_LOAD) * frontLoadN + keptN;
      forceN = moving.front(arrivedN, frontAcrossN, engineN, forceN);
      forceN = moving.rear(rearLoadN - keptN, rearAcrossN, engineN, forceN);
      const heldN = forceN > 0 ? engineN : heldOffN(sM, w, engineN);
      return (forceN + heldN) * perNewton;
    },
  };
}

/** Brake force where something else than the axles decides it, N; Infinity where they do. */
function ownForce(
  profile: AppliedZone['profile'],
  curve: AppliedZone['curve'],
): (sM: number) => number {
  let i = 0;
  return (sM) => {
    while ((profile[i + 1]?.sM ?? Number.POSITIVE_INFINITY) <= sM) i++;
    const byAxle = profile[i]?.limiter === 'front axle' || profile[i]?.limiter === 'rear axle';
    return byAxle ? Number.POSITIVE_INFINITY : curve.brakeForceN(sM);
  };
}

/** Linear between places, constant outside. */
function between(places: readonly number[], values: readonly number[]): LateLoad {
  const last = places.length - 1;
  return (sM) => {
    let low = 0;
    let high = last;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((places[middle] as number) <= sM) low = middle;
      else high = middle - 1;
    }
    const a = values[low] ?? 0;
    const b = values[low + 1] ?? a;
    const from = places[low] ?? sM;
    const to = places[low + 1] ?? Number.POSITIVE_INFINITY;
    return a + (b - a) * Math.min(1, Math.max(0, (sM - from) / (to - from)));
  };
}
