import { wheelbaseM } from '../car/chassis.ts';
import { axleLimitsUnderLoadN } from '../corner/two-axle.ts';
import { CAUGHT_UP } from '../target/derive/application.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import {
  engineBrakingOf,
  type GearSchedule,
  roadOf,
  twoAxleCar,
} from '../target/derive/zone-model.ts';
import { riseShare } from '../target/rise-shape.ts';
import { drivenGears } from './driven-gears.ts';
import { type FollowLaw, followLaw, type SlowerWay } from './follow-law.ts';
import { STEP_S } from './live-car.ts';
import type { LiveRun } from './live-run.ts';
import type { LiveZone } from './live-zone.ts';
import { railSteeringRad } from './rail-steering.ts';
import { stepOf } from './run-steps.ts';

/**
 * What a driver on the limit would have given at every step of a zone, from the speed the car really had: one late
 * brake is one fault, and what follows is held against what was still possible. Columns as long as the run's.
 */
export interface FollowedTarget {
  readonly level: Float64Array;
  /** At the steering wheel, left positive: the rail at the car's own speed. */
  readonly steeringRad: Float64Array;
  /** Step at which it begins to rise. */
  readonly riseStep: number;
  /** Step at which the first application has met the limit; null where it never did. */
  readonly metStep: number | null;
}

/**
 * The followed target of a run: a minimum-jerk rise in the driver's rise time from `riseS`, held back while the load is
 * still on its way forward, then the law of `followLaw`; never falling faster than a foot releases, nothing beyond
 * the slowest point.
 *
 * @param riseS when the driver began to brake, seconds from the cue
 */
export function followedTarget(
  zone: LiveZone,
  run: LiveRun,
  riseS: number,
  slower: SlowerWay = 'ratio',
): FollowedTarget {
  const { timeS, placeM, speedMps } = run.columns;
  const gears = drivenGears(run);
  const law = followLaw(zone.derived, gears, slower);
  const riseStep = stepOf(run, riseS);
  const foot = startFoot(zone, law, pitchOf(zone.derived, gears));
  let metStep: number | null = null;
  const level = new Float64Array(timeS.length);
  for (let i = riseStep; i < timeS.length; i++) {
    const passing = { sM: placeM[i]!, speedMps: speedMps[i]! };
    level[i] = foot.level(passing, (i - riseStep) * STEP_S);
    if (metStep === null && foot.hasMet()) metStep = i;
  }
  const steeringRad = speedMps.map((speed, i) =>
    railSteeringRad(zone.car, zone.corner.path.curvatureAt(placeM[i]!), speed),
  );
  return { level, steeringRad, riseStep, metStep };
}

/** A place on the way and the speed the car had there. */
interface Passing {
  readonly sM: number;
  readonly speedMps: number;
}

interface Foot {
  level(passing: Passing, sinceRiseS: number): number;
  hasMet(): boolean;
}

/** The foot of the driver on the limit, from step to step. */
function startFoot({ derived, car }: LiveZone, law: FollowLaw, pitch: Pitch): Foot {
  const { riseS, releaseNps } = car.driver;
  const share = riseShare('minimum-jerk');
  let pedalN = 0;
  let met = false;
  const forceN = (passing: Passing, sinceRiseS: number): number => {
    const { sM, speedMps } = passing;
    if (sM >= derived.zone.slowestM) return 0;
    if (met) return law.forceN(sM, speedMps);
    const aimN = law.aimN(sM, speedMps);
    const risingN = Math.min(
      aimN * share(Math.min(1, sinceRiseS / riseS)),
      pitch.carriedN(passing),
    );
    met = sinceRiseS >= riseS && risingN >= CAUGHT_UP * aimN;
    return risingN;
  };
  return {
    level: (passing, sinceRiseS) => {
      const brakeForceN = forceN(passing, sinceRiseS);
      pitch.advance(passing, brakeForceN);
      const wantedN = law.pedalN(passing.sM, passing.speedMps, brakeForceN);
      pedalN = Math.max(wantedN, pedalN - releaseNps * STEP_S);
      return Math.min(1, pedalN / car.fullScalePedalForceN);
    },
    hasMet: () => met,
  };
}

/** The load that braking brings forward, first order, and what the axles carry meanwhile. */
interface Pitch {
  /** Brake force of both axles at the road, N. */
  carriedN(passing: Passing): number;
  advance(passing: Passing, brakeForceN: number): void;
}

const NO_AXLES: Pitch = { carriedN: () => Number.POSITIVE_INFINITY, advance: () => undefined };

function pitchOf({ car, corner, zone }: DerivedTarget, schedule: GearSchedule): Pitch {
  if (zone.model === 'point-mass') return NO_AXLES;
  const twoAxle = twoAxleCar(car, corner.gripShare);
  const road = roadOf(corner);
  const engine = engineBrakingOf(car, schedule);
  const perNewton = car.chassis.cgHeightM / wheelbaseM(car.chassis);
  const rate = 2 * Math.PI * car.pitchHz * STEP_S;
  let transferN = 0;
  return {
    carriedN: ({ sM, speedMps }) => {
      const w = speedMps ** 2;
      return axleLimitsUnderLoadN(twoAxle, road, { sM, w, engineN: engine(sM, w), transferN });
    },
    advance: ({ sM, speedMps }, brakeForceN) => {
      const settledN = (brakeForceN + engine(sM, speedMps ** 2)) * perNewton;
      transferN += (settledN - transferN) * rate;
    },
  };
}
