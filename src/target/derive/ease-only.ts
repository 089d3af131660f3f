import { brakeForcesN } from '../../car/brake-force.ts';
import type { Car } from '../../car/car.ts';
import type { ForceBound } from '../../corner/speed-profile.ts';
import { fallingRoot } from './falling-root.ts';
import { ROUGH_STEP_M } from './settle-gears.ts';
import { type SolvedProfile, solveProfile, type ZoneProblem } from './solve-profile.ts';
import type { GearSchedule } from './zone-model.ts';

/** A rise of less than this share of the largest force is nothing to a foot. */
const RISE = 0.01;
/** What no foot can hold: with less there it is off the brake. Twice the level at which a brake takes hold. */
const LEAST_LEVEL = 0.03;
const MOST_RISES = 3;
/** How closely a bound is looked for, as a level. */
const CLOSE_LEVEL = 2e-4;

/** A profile that only eases, with the bounds that it took. */
interface EasedProfile extends SolvedProfile {
  readonly bounds: readonly ForceBound[];
}

/**
 * The profile of a foot that only eases once it is down: where the limit would let it come back (a motor that fades out, a
 * second apex), the force there stays so low that the car can have been slow enough before. A foot that lets go in no time
 * can come back as well, and has the limit.
 *
 * @param like bounds of a zone that hardly differs: these are looked for around them
 * @param places whether they stay where they are, whatever else comes up: a bound that comes and goes settles nothing
 */
export function solveEaseOnly(
  problem: ZoneProblem,
  schedule: GearSchedule,
  stepM: number,
  like: readonly ForceBound[],
  places: 'new' | 'kept' = 'new',
): EasedProfile {
  const { releaseNps } = problem.car.driver;
  const solve = (bounds: readonly ForceBound[], step: number = stepM): EasedProfile => ({
    ...solveProfile(problem, schedule, releaseNps, step, bounds),
    bounds,
  });
  if (!Number.isFinite(releaseNps)) return solve([]);
  const fullN = fullScaleN(problem.car);
  const boundAt = (before: readonly ForceBound[], fromM: number, guessN: number): ForceBound => {
    const mostN = mostHeld(fullN, guessN, (triedN) => {
      const tried = solve([...before, { fromM, mostN: triedN }], ROUGH_STEP_M);
      return leastUpTo(tried, fromM) - triedN;
    });
    return { fromM, mostN };
  };
  let bounds: readonly ForceBound[] = [];
  if (places === 'kept')
    for (const { fromM, mostN } of like) bounds = [...bounds, boundAt(bounds, fromM, mostN)];
  let solved = solve(bounds);
  for (let i = bounds.length; i < MOST_RISES; i++) {
    const rise = largestRise(problem, solved);
    if (rise === null) break;
    const { fromM, toN } = rise;
    bounds = [...bounds, boundAt(bounds, fromM, like[i]?.mostN ?? toN / 2)];
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

/** The least force before a bound begins, and what the limit would have been there. */
function leastUpTo({ model, profile }: SolvedProfile, fromM: number): number {
  let leastN = Number.POSITIVE_INFINITY;
  for (const { sM, speedMps, brakeForceN } of profile) {
    if (sM > fromM) break;
    const isFree = sM < fromM;
    leastN = Math.min(leastN, isFree ? brakeForceN : model.limit(sM, speedMps ** 2).brakeForceN);
  }
  return leastN;
}

/**
 * The largest bound over a rise that the force in front of it nowhere falls below; 0 where no foot can hold that.
 *
 * @param fullN force at full scale
 * @param guessN where to begin
 * @param spareN by how much the force in front is above a bound: the more a bound allows, the less is left there
 */
function mostHeld(fullN: number, guessN: number, spareN: (mostN: number) => number): number {
  const mostN = fallingRoot(spareN, guessN, CLOSE_LEVEL * fullN);
  return mostN < LEAST_LEVEL * fullN ? 0 : mostN;
}
