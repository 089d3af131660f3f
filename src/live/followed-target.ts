import { pedalForceForN } from '../car/brake-force.ts';
import { wheelbaseM } from '../car/chassis.ts';
import { axleLimitsUnderLoadN } from '../corner/two-axle.ts';
import { roadOf, twoAxleCar } from '../target/derive/zone-model.ts';
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

/** Share of the limit at which the application has met it, as in the derived zone. */
const MET = 0.97;

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
  const law = followLaw(zone.derived, drivenGears(run), slower);
  const riseStep = stepOf(run, riseS);
  const foot = startFoot(zone, law);
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

interface Passing {
  readonly sM: number;
  readonly speedMps: number;
}

interface Foot {
  level(passing: Passing, sinceRiseS: number): number;
  hasMet(): boolean;
}

/** The foot of the driver on the limit, from step to step. */
function startFoot({ derived, car }: LiveZone, law: FollowLaw): Foot {
  const { riseS, releaseNps } = car.driver;
  const share = riseShare('minimum-jerk');
  const slowestM = derived.zone.slowestM;
  const pitch = pitchOf(derived);
  let pedalN = 0;
  let met = false;
  const forceN = (passing: Passing, sinceRiseS: number): number => {
    if (passing.sM >= slowestM) return 0;
    if (met) return law.forceN(passing.sM, passing.speedMps);
    const aimN = law.aimN(passing.sM, passing.speedMps);
    const risingN = Math.min(
      aimN * share(Math.min(1, sinceRiseS / riseS)),
      pitch.carriedN(passing),
    );
    met = sinceRiseS >= riseS && risingN >= MET * aimN;
    return risingN;
  };
  return {
    level: (passing, sinceRiseS) => {
      const givenN = forceN(passing, sinceRiseS);
      pitch.advance(givenN);
      const wantedN = givenN > 0 ? pedalForceForN(car.brakes, givenN) : 0;
      pedalN = Math.max(wantedN, pedalN - releaseNps * STEP_S);
      return Math.min(1, pedalN / car.fullScalePedalForceN);
    },
    hasMet: () => met,
  };
}

/** The load that pitch brings forward, first order, and what the axles carry meanwhile; nothing without axles. */
function pitchOf({ car, corner, zone }: LiveZone['derived']): {
  carriedN(passing: Passing): number;
  advance(brakeForceN: number): void;
} {
  if (zone.model === 'point-mass')
    return { carriedN: () => Number.POSITIVE_INFINITY, advance: () => undefined };
  const twoAxle = twoAxleCar(car, corner.gripShare);
  const perNewton = car.chassis.cgHeightM / wheelbaseM(car.chassis);
  const rate = 2 * Math.PI * car.pitchHz * STEP_S;
  const road = roadOf(corner);
  let transferN = 0;
  return {
    carriedN: ({ sM, speedMps }) =>
      axleLimitsUnderLoadN(twoAxle, road, { sM, w: speedMps ** 2, transferN }),
    advance: (brakeForceN) => {
      transferN += (brakeForceN * perNewton - transferN) * rate;
    },
  };
}
