import { brakeForcesN } from '../../car/brake-force.ts';
import type { Car } from '../../car/car.ts';
import type { ForceBound } from '../../corner/speed-profile.ts';
import { ROUGH_STEP_M } from './settle-gears.ts';
import { type SolvedProfile, solveProfile, type ZoneProblem } from './solve-profile.ts';
import type { GearSchedule } from './zone-model.ts';

/** A rise of less than this share of the largest force is nothing to a foot. */
const RISE = 0.01;
/** What no foot can hold: with less there it is off the brake. Twice the level at which a brake takes hold. */
const LEAST_LEVEL = 0.03;
const MOST_RISES = 3;
const HALVINGS = 9;

/**
 * The profile of a foot that only eases once it is down: where the limit would let it come back (a motor that fades out, a
 * second apex), the force there stays so low that the car can have been slow enough before. A foot that lets go in no time
 * can come back as well, and has the limit.
 */
export function solveEaseOnly(
  problem: ZoneProblem,
  schedule: GearSchedule,
  stepM: number,
): SolvedProfile {
  const { releaseNps } = problem.car.driver;
  const solve = (bounds: readonly ForceBound[], step: number = stepM): SolvedProfile =>
    solveProfile(problem, schedule, releaseNps, step, bounds);
  const leastN = LEAST_LEVEL * fullScaleN(problem.car);
  let bounds: readonly ForceBound[] = [];
  let solved = solve(bounds);
  if (!Number.isFinite(releaseNps)) return solved;
  for (let i = 0; i < MOST_RISES; i++) {
    const rise = largestRise(problem, solved);
    if (rise === null) break;
    const bound = mostWithout(rise, leastN, (mostN) =>
      solve([...bounds, { fromM: rise.fromM, mostN }], ROUGH_STEP_M),
    );
    bounds = [...bounds, bound];
    solved = solve(bounds);
  }
  return solved;
}

/** Brake force at full scale, N. */
function fullScaleN({ brakes, fullScalePedalForceN }: Car): number {
  const { front, rear } = brakeForcesN(brakes, fullScalePedalForceN);
  return front + rear;
}

/** A place from which the force rises, and how far. */
interface Rise {
  readonly fromM: number;
  readonly toN: number;
}

/** Of the part that is driven: below the approach speed. Null where it is nothing to a foot. */
function largestRise({ corner }: ZoneProblem, { profile }: SolvedProfile): Rise | null {
  const driven = profile.filter(({ speedMps }) => speedMps <= corner.approachSpeedMps);
  const most = Math.max(0, ...driven.map(({ brakeForceN }) => brakeForceN));
  let least = { sM: 0, brakeForceN: Number.POSITIVE_INFINITY };
  let largest: Rise | null = null;
  let by = RISE * most;
  for (const point of driven) {
    if (point.brakeForceN < least.brakeForceN) least = point;
    if (point.brakeForceN - least.brakeForceN <= by) continue;
    by = point.brakeForceN - least.brakeForceN;
    largest = { fromM: least.sM, toN: point.brakeForceN };
  }
  return largest;
}

/** The largest bound over a rise that the force in front of it nowhere falls below. */
function mostWithout(
  { fromM, toN }: Rise,
  leastN: number,
  solve: (mostN: number) => SolvedProfile,
): ForceBound {
  let [low, high] = [0, toN];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    const before = solve(middle).profile.filter(({ sM }) => sM <= fromM);
    if (before.every(({ brakeForceN }) => brakeForceN >= middle)) low = middle;
    else high = middle;
  }
  return { fromM, mostN: low < leastN ? 0 : low };
}
