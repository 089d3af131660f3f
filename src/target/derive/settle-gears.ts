import type { ProfilePoint } from '../../corner/speed-profile.ts';
import { planDownshifts, scheduleOf } from './downshifts.ts';
import { type SolvedProfile, solveProfile, type ZoneProblem } from './solve-profile.ts';
import type { GearSchedule } from './zone-model.ts';

/** Gears move the profile and the profile moves the gears: after this many rounds they have settled to centimetres. */
const MOST_GEAR_ROUNDS = 4;
const SETTLED_M = 0.05;
/** Step while gears and loads settle, m: places come out to a centimetre. */
export const ROUGH_STEP_M = 4;

/** The gears of a zone and roughly the profile that they make. */
export function settleGears(problem: ZoneProblem): {
  readonly schedule: GearSchedule;
  readonly solved: SolvedProfile;
} {
  const { car, corner } = problem;
  const { releaseNps } = car.driver;
  let schedule: GearSchedule = [{ fromM: Number.NEGATIVE_INFINITY, gear: corner.gears.approach }];
  let solved = solveProfile(problem, schedule, releaseNps, ROUGH_STEP_M);
  for (let round = 0; round < MOST_GEAR_ROUNDS; round++) {
    const next = nextSchedule(problem, solved);
    if (isSettled(next, schedule)) break;
    schedule = next;
    solved = solveProfile(problem, schedule, releaseNps, ROUGH_STEP_M);
  }
  return { schedule, solved };
}

function nextSchedule(problem: ZoneProblem, solved: SolvedProfile): GearSchedule {
  const { corner } = problem;
  const brakePointM = reachedAt(solved.profile, corner.approachSpeedMps);
  return scheduleOf(corner, planDownshifts({ ...problem, ...solved, brakePointM }));
}

function isSettled(next: GearSchedule, before: GearSchedule): boolean {
  return next.every(
    ({ fromM }, i) =>
      Math.abs(fromM - (before[i]?.fromM ?? Number.NaN)) < SETTLED_M || fromM === before[i]?.fromM,
  );
}

/** Where the limit's speed has come down to the approach speed: a little after the brake point. */
function reachedAt(profile: readonly ProfilePoint[], approachSpeedMps: number): number {
  const first = profile.find(({ speedMps }) => speedMps <= approachSpeedMps);
  return (first ?? (profile[profile.length - 1] as ProfilePoint)).sM;
}
