import type { DrillView } from '../../drill/drill-view.ts';
import { gaussian, type RandomSource } from '../../drill/seeded-random.ts';
import type { LiveView } from '../../live/live-view.ts';
import { type BrakingPlan, planBraking } from './braking-plan.ts';
import type { Wish } from './controls.ts';
import type { ErrorDraw } from './draw-errors.ts';
import type { RepErrors } from './rep-errors.ts';
import { type RoadIdea, roadIdeaOf } from './road-idea.ts';

/** Standard deviation of what is timed on a mark that arrives. */
const TIMING_NOISE_S = 0.03;
/** The throttle is lifted a little before the brake is touched, and a foot rises no faster. Common practice, no source. */
const LIFT_BEFORE_S = 0.15;
const FOOT_PER_S = 6;
/** Length of a correction by eye, m: 0.3 s at a usual speed. */
const CORRECTION_M = 8;
/** Down a gear when the engine has come down to this share of its limit, one after the other. Common practice, no source. */
const SHIFT_AT_SHARE = 0.7;
const BETWEEN_SHIFTS_S = 0.3;
const PADDLE_S = 0.08;
/** A locked wheel is answered after a moment by this share less, taken back slowly. Common practice, no source. */
const REACTION_S = 0.1;
const EASE_SHARE = 0.12;
const BACK_PER_S = 0.4;
/** How much sooner a driver brakes who is called and shown no mark. Common practice, no source. */
const CALLED_SOONER_M = 15;

/** One zone as it is being driven. */
interface Attempt {
  readonly errors: RepErrors;
  readonly timingS: number;
  pressS: number;
  pressM: number;
  road: RoadIdea;
  plan: BrakingPlan;
  peaked: boolean;
  level: number;
  ease: number;
  lockedSinceS: number | null;
  shiftAtS: number;
  lastS: number;
}

/**
 * A driver of the live car who knows only what its picture shows: the mark that comes closer or the place remembered,
 * the target over distance, the engine's speed, and wheels that lock.
 */
export class LiveDriver {
  readonly #draw: ErrorDraw;
  readonly #timing: RandomSource;
  /** Zones seen so far, by name. */
  readonly #remembered: Map<string, RoadIdea> = new Map();
  #reps: number;
  #attempt: Attempt | null = null;
  #seen: { readonly view: DrillView; readonly live: LiveView } | null = null;

  /** @param reps of practice that the driver brings along */
  constructor(draw: ErrorDraw, timing: RandomSource, reps = 0) {
    this.#reps = reps;
    this.#draw = draw;
    this.#timing = timing;
  }

  see(view: DrillView, live: LiveView): void {
    this.#seen = { view, live };
    const road = this.#recall(view, live);
    if (live.stage === 'waiting' || live.stage === 'over') this.#attempt = null;
    else if (this.#attempt === null) this.#attempt = this.#begin(view, road);
    if (this.#attempt === null) return;
    if (live.stage === 'approach') approach(this.#attempt, view, live, road);
    watchWheels(this.#attempt, view, live);
  }

  /** Where feet and hands should be; null with nothing to do. */
  wishAt(timeS: number, noise: number): Wish | null {
    if (this.#attempt === null || this.#seen === null) return null;
    const { view, live } = this.#seen;
    const placeM = live.placeM + live.speedMps * (timeS - view.atS);
    return wishOf(this.#attempt, live, timeS, placeM, noise);
  }

  #recall(view: DrillView, live: LiveView): RoadIdea {
    const name = `${view.targetName} ${live.call ?? ''}`;
    const uncalled = this.#remembered.get(`${view.targetName} `) ?? null;
    const known = this.#remembered.get(name) ?? (live.call === null ? null : sooner(uncalled));
    const road = roadIdeaOf(view, live, known);
    this.#remembered.set(name, road);
    return road;
  }

  #begin(view: DrillView, road: RoadIdea): Attempt {
    const drawn = this.#draw(road.idea, this.#reps++, view.feedback);
    const { reapplication } = drawn;
    const errors = {
      ...drawn,
      reapplication: reapplication && { ...reapplication, lengthS: CORRECTION_M },
    };
    return {
      errors,
      timingS: TIMING_NOISE_S * gaussian(this.#timing),
      pressS: Number.POSITIVE_INFINITY,
      pressM: road.brakeM,
      road,
      plan: planBraking(road.idea, errors),
      peaked: false,
      level: 0,
      ease: 0,
      lockedSinceS: null,
      shiftAtS: 0,
      lastS: view.atS,
    };
  }
}

function sooner(known: RoadIdea | null): RoadIdea | null {
  return known && { ...known, brakeM: known.brakeM - CALLED_SOONER_M };
}

/** Times the brake on the mark that comes closer; what is called on the way is taken up. */
function approach(attempt: Attempt, { atS }: DrillView, live: LiveView, road: RoadIdea): void {
  if (attempt.pressS <= atS) return;
  if (road.brakeM !== attempt.road.brakeM || road.slowestGear !== attempt.road.slowestGear) {
    attempt.road = road;
    attempt.plan = planBraking(road.idea, attempt.errors);
  }
  attempt.pressS = atS + (road.brakeM - live.placeM) / live.speedMps + attempt.timingS;
  attempt.pressM = road.brakeM + attempt.timingS * live.speedMps;
}

function watchWheels(attempt: Attempt, { atS }: DrillView, { locked }: LiveView): void {
  if (locked === null) attempt.lockedSinceS = null;
  else attempt.lockedSinceS ??= atS;
  const noticed = attempt.lockedSinceS !== null && atS - attempt.lockedSinceS >= REACTION_S;
  if (noticed) attempt.ease = EASE_SHARE;
}

function wishOf(
  attempt: Attempt,
  live: LiveView,
  timeS: number,
  placeM: number,
  noise: number,
): Wish {
  const stepS = Math.max(0, timeS - attempt.lastS);
  attempt.lastS = timeS;
  attempt.ease = Math.max(0, attempt.ease - BACK_PER_S * stepS);
  const wanted = timeS >= attempt.pressS ? levelWanted(attempt, placeM) : 0;
  attempt.level = Math.min(wanted, attempt.level + FOOT_PER_S * stepS);
  const { road } = attempt;
  return {
    brake: Math.min(1, Math.max(0, attempt.level * (1 - attempt.ease) * (1 + noise))),
    throttle: timeS < attempt.pressS - LIFT_BEFORE_S ? 1 : 0,
    clutch: 0,
    steeringDeg: road.idea.steeringDegAt(placeM - road.brakeM),
    leftPaddle: pullsPaddle(attempt, live, timeS),
    nextButton: false,
  };
}

/** The first application begins where it was begun; from the peak on the road says how much. */
function levelWanted(attempt: Attempt, placeM: number): number {
  const { plan, road, errors, pressM } = attempt;
  const peakM = road.idea.peakS * errors.riseRatio;
  const sinceM = placeM - pressM;
  attempt.peaked ||= sinceM >= peakM;
  return plan.levelAt(attempt.peaked ? Math.max(peakM, placeM - road.brakeM) : sinceM);
}

function pullsPaddle(attempt: Attempt, live: LiveView, timeS: number): boolean {
  const { gear, rpm, revLimitRpm, stage } = live;
  const isDue =
    stage === 'zone' &&
    gear > attempt.road.slowestGear &&
    rpm < SHIFT_AT_SHARE * revLimitRpm &&
    timeS >= attempt.shiftAtS + BETWEEN_SHIFTS_S;
  if (isDue) attempt.shiftAtS = timeS;
  return timeS < attempt.shiftAtS + PADDLE_S && attempt.shiftAtS > 0;
}
