import { brakeForcesN } from '../../car/brake-force.ts';
import type { Car } from '../../car/car.ts';
import type { ForceBound } from '../../corner/speed-profile.ts';
import { lastThatHolds } from './last-that-holds.ts';
import { ROUGH_STEP_M } from './settle-gears.ts';
import { type SolvedProfile, solveProfile, type ZoneProblem } from './solve-profile.ts';
import type { GearSchedule } from './zone-model.ts';

/** A rise of less than this share of the largest force is nothing to a foot. */
const RISE = 0.01;
/** What no foot can hold: with less there it is off the brake. Twice the level at which a brake takes hold. */
const LEAST_LEVEL = 0.03;
const MOST_RISES = 3;
/** A bound is looked for in this many parts of the force that it keeps out. */
const PARTS = 512;

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
 */
export function solveEaseOnly(
  problem: ZoneProblem,
  schedule: GearSchedule,
  stepM: number,
  like: readonly ForceBound[],
): EasedProfile {
  const { releaseNps } = problem.car.driver;
  const solve = (bounds: readonly ForceBound[], step: number = stepM): EasedProfile => ({
    ...solveProfile(problem, schedule, releaseNps, step, bounds),
    bounds,
  });
  const leastN = LEAST_LEVEL * fullScaleN(problem.car);
  let solved = solve([]);
  if (!Number.isFinite(releaseNps)) return solved;
  for (let i = 0; i < MOST_RISES; i++) {
    const rise = largestRise(problem, solved);
    if (rise === null) break;
    const { bounds } = solved;
    const bound = mostWithout(rise, leastN, like[i] ?? null, (mostN) =>
      solve([...bounds, { fromM: rise.fromM, mostN }], ROUGH_STEP_M),
    );
    solved = solve([...bounds, bound]);
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

/** The largest bound over a rise that the force in front of it nowhere falls below; 0 where no foot can hold that. */
function mostWithout(
  { fromM, toN }: Rise,
  leastN: number,
  like: ForceBound | null,
  solve: (mostN: number) => SolvedProfile,
): ForceBound {
  const boundN = (part: number): number => (toN * part) / PARTS;
  const holds = (part: number): boolean => {
    const mostN = boundN(part);
    return solve(mostN).profile.every(({ sM, brakeForceN }) => sM > fromM || brakeForceN >= mostN);
  };
  const tooLittle = Math.min(PARTS, Math.ceil((leastN * PARTS) / toN)) - 1;
  const guess = like === null ? null : Math.round((like.mostN * PARTS) / toN);
  const part = lastThatHolds(holds, tooLittle, PARTS, guess);
  return { fromM, mostN: part === tooLittle ? 0 : boundN(part) };
}
