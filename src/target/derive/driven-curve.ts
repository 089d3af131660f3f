import { brakeForcesN } from '../../car/brake-force.ts';
import type { Car } from '../../car/car.ts';
import { wheelbaseM } from '../../car/chassis.ts';
import { axleUse } from '../../corner/axle-use.ts';
import { type BrakingModel, JUST_ON_N } from '../../corner/braking-model.ts';
import { axleLimitsUnderLoadN, type Road, type TwoAxleCar } from '../../corner/two-axle.ts';
import type { Target } from '../target.ts';
import type { DerivedTarget } from './derive-target.ts';
import { scheduleOf } from './downshifts.ts';
import { fullScaleForceN } from './full-scale-force.ts';
import { engineBrakingOf, zoneModel, zoneSetting } from './zone-model.ts';

/** A moment of a car whose driver follows a target exactly. */
export interface DrivenPlace {
  /** On the target's own axis: seconds after the start of the rise, or metres to the slowest point. */
  readonly at: number;
  /** Along the path from turn-in, m, negative before it. */
  readonly sM: number;
  readonly speedMps: number;
  readonly level: number;
  /** Grip asked for over grip there is (the share that the corner sheet uses), by axle; above 1 it is exceeded. */
  readonly frontUse: number;
  readonly rearUse: number;
}

export interface DrivenCurve {
  /** In driving order from the start of the rise to the slowest point, every 5 ms. */
  readonly places: readonly DrivenPlace[];
  /** Speed at the slowest point with the target exactly as it is; null where the car stops before it. */
  readonly arrivesMps: number | null;
  /** What the corner carries there. */
  readonly carriesMps: number;
}

const STEP_S = 0.005;
const MOST_STEPS = 5000;

/**
 * What a target asks of a car, by the model of the derivation: both axles' ellipses, load that comes and goes with the lag
 * of pitch, engine braking in the derived gears. An axle that is asked for more than its grip gives it all the same, so
 * that each part of a curve is judged by itself; off the brake the car rolls on at its speed; bumps are left out.
 *
 * A curve that is a per cent light all the way arrives several per cent too fast. That is told as `arrivesMps`, and the
 * use of grip is that of a driver who mends the difference evenly on the way: the squared speed is stretched to end at
 * what the corner carries.
 *
 * A level stands for the pedal force that the target's file says, or else the car's. A target over time begins to rise at
 * the derived brake point.
 */
export function drivenCurve(derived: DerivedTarget, target: Target): DrivenCurve {
  const carriesMps = derived.keys.slowest.speedMps;
  const run = runOf(derived, target);
  const startW = derived.corner.approachSpeedMps ** 2;
  const endW = (run.arrivesMps ?? 0) ** 2;
  const stretch =
    run.arrivesMps === null || endW >= startW ? 1 : (startW - carriesMps ** 2) / (startW - endW);
  const setting = zoneSetting(derived.car, derived.corner);
  const places = run.moments.map(
    ({ answer: { askedN, engineN, waiting, lateLoadN }, ...moment }) => {
      const speedMps = Math.sqrt(Math.max(1, startW - stretch * (startW - moment.speedMps ** 2)));
      const { sM } = moment;
      const use = axleUse(setting.axles, setting.road, {
        sM,
        speedMps,
        brakeForceN: askedN,
        engineN: moment.level > 0 ? engineN : 0,
        lateLoadN,
      });
      return {
        ...moment,
        speedMps,
        frontUse: Math.max(use.front, waiting),
        rearUse: use.rear,
      };
    },
  );
  return { places, arrivesMps: run.arrivesMps, carriesMps };
}

/** A step of the way with the target exactly as it is. */
interface Moment extends Pick<DrivenPlace, 'at' | 'sM' | 'speedMps' | 'level'> {
  readonly answer: Answer;
}

function runOf(
  derived: DerivedTarget,
  target: Target,
): { readonly moments: readonly Moment[]; readonly arrivesMps: number | null } {
  const { slowestM, brakePointM } = derived.zone;
  const car = drivenCar(derived, fullScaleForceN(target, derived.car));
  const moments: Moment[] = [];
  let speedMps = derived.corner.approachSpeedMps;
  let sM = target.domain === 'time' ? brakePointM : slowestM - target.marks.rise;
  for (let step = 0; step < MOST_STEPS && sM < slowestM && speedMps > 0; step++) {
    const at = target.domain === 'time' ? step * STEP_S : slowestM - sM;
    const level = target.level.at(at);
    const answer = car.answer(sM, speedMps, level);
    moments.push({ at, sM, speedMps, level, answer });
    const next = Math.max(0, speedMps - answer.decelerationMps2 * STEP_S);
    sM += ((speedMps + next) / 2) * STEP_S;
    speedMps = next;
  }
  return { moments, arrivesMps: sM >= slowestM ? speedMps : null };
}

interface Answer {
  readonly decelerationMps2: number;
  /** Friction brakes at the road, N, and engine braking. */
  readonly askedN: number;
  readonly engineN: number;
  /** Use of the front axle while it waits for its load; 0 where it does not. */
  readonly waiting: number;
  /** Load that the rear axle waits for, N; 0 where it does not. */
  readonly lateLoadN: number;
}

const OFF: Answer = { decelerationMps2: 0, askedN: 0, engineN: 0, waiting: 0, lateLoadN: 0 };

interface DrivenCar {
  /** What the car does with a level here; called once per step, because load is under way. */
  answer(sM: number, speedMps: number, level: number): Answer;
}

function drivenCar({ car, corner, zone }: DerivedTarget, fullScaleN: number): DrivenCar {
  const setting = zoneSetting(car, corner);
  const { axles, road } = setting;
  const schedule = scheduleOf(corner, zone.downshifts);
  const model = zoneModel('two-axle', setting, schedule);
  const engine = engineBrakingOf(car, schedule);
  const perNewton = car.chassis.cgHeightM / wheelbaseM(car.chassis);
  const rate = 1 - Math.exp(-2 * Math.PI * car.pitchHz * STEP_S);
  let transferN = 0;
  return {
    answer: (sM, speedMps, level) => {
      if (level <= 0) {
        transferN -= transferN * rate;
        return OFF;
      }
      const w = speedMps ** 2;
      const engineN = engine(sM, w);
      const askedN = roadForceN(car, model, { sM, w, pedalN: level * fullScaleN });
      const settledN = (askedN + engineN) * perNewton;
      const waiting =
        settledN > transferN ? waitingUse(axles, road, { sM, w, engineN, transferN }, askedN) : 0;
      transferN += (settledN - transferN) * rate;
      const lateLoadN = Math.max(0, transferN - settledN);
      const decelerationMps2 = model.decelerationMps2(sM, w, askedN);
      return { decelerationMps2, askedN, engineN, waiting, lateLoadN };
    },
  };
}

/** Load comes to the front axle with the lag of pitch: until it is there, that axle carries less. */
function waitingUse(
  axles: TwoAxleCar,
  road: Road,
  place: Parameters<typeof axleLimitsUnderLoadN>[2],
  askedN: number,
): number {
  const carriedN = axleLimitsUnderLoadN(axles, road, place);
  return carriedN > 0 ? askedN / carriedN : 0;
}

/** Force of the friction brakes at the road for a pedal force, N: what slows the turning parts is taken off. */
function roadForceN(
  car: Car,
  model: BrakingModel,
  { sM, w, pedalN }: { readonly sM: number; readonly w: number; readonly pedalN: number },
): number {
  const { front, rear } = brakeForcesN(car.brakes, pedalN);
  const othersN = car.chassis.massKg * model.decelerationMps2(sM, w, JUST_ON_N);
  return Math.max(0, (front + rear - car.rotatingShare * othersN) / (1 + car.rotatingShare));
}
