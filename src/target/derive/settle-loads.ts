import { DEFAULT_STEP_M, type ForceBound } from '../../corner/speed-profile.ts';
import { findBrakePoint, type Pitch } from './application.ts';
import { type Downshift, planDownshifts, scheduleOf } from './downshifts.ts';
import { solveEaseOnly } from './ease-only.ts';
import { type LateLoad, lateLoadOf } from './late-load.ts';
import { movedM } from './moved.ts';
import { ROUGH_STEP_M, settleGears } from './settle-gears.ts';
import { type SolvedProfile, solveProfile, type ZoneProblem } from './solve-profile.ts';
import { engineBrakingOf, type GearSchedule, type ZoneSetting } from './zone-model.ts';
import type { AppliedZone } from './zone-points.ts';

/** A zone whose profile, application, gears and loads fit each other. */
interface SettledZone {
  readonly zone: AppliedZone;
  /** See `solveEaseOnly`. */
  readonly bounds: readonly ForceBound[];
  readonly schedule: GearSchedule;
  readonly lateLoadN: LateLoad;
}

/** Gears and loads move the profile and the profile moves them: the rough rounds bring them near, to centimetres. */
const ROUGH_ROUNDS = 5;
const SETTLED_M = 0.02;
/** Gears that come and go by a hair stay as they are from this round on. */
const GEARS_STAY_ROUND = 2;
/** A gear this much earlier or later makes no difference to the brakes. */
const SAME_SHIFT_M = 3;
/** Two do for most zones. */
const FINE_ROUNDS = { least: 2, most: 10 };
/** From this fine round on the loads go only half of the way, as they may jump to and fro between two answers. */
const HALF_WAY_ROUND = 3;

/** Solves a zone until the brake that its axles allow is the one that their late loads are of. */
export function settleLoads(
  problem: ZoneProblem,
): SettledZone & { readonly downshifts: readonly Downshift[]; readonly unsettledM: number } {
  const { schedule, solved } = settleGears(problem);
  if (problem.model === 'point-mass') return withoutLoads(problem, schedule);
  let settled = settledZone(problem, schedule, solved);
  for (let round = 0; round < ROUGH_ROUNDS; round++) {
    const before = settled.zone.brakePointM;
    const gears = round < GEARS_STAY_ROUND ? gearsOf(problem, settled) : settled.schedule;
    settled = oneRound(problem, settled, gears, ROUGH_STEP_M);
    const isSettled = Math.abs(settled.zone.brakePointM - before) < SETTLED_M;
    if (isSettled && round + 1 >= GEARS_STAY_ROUND) break;
  }
  let lastMoveM = Number.POSITIVE_INFINITY;
  for (let round = 1; round <= FINE_ROUNDS.most; round++) {
    const before = settled.zone;
    settled = fineRound(problem, settled, round);
    lastMoveM = movedM(before, settled.zone);
    if (lastMoveM < SETTLED_M && round >= FINE_ROUNDS.least) break;
  }
  const unsettledM = lastMoveM < SETTLED_M ? 0 : lastMoveM;
  return { ...settled, downshifts: shiftsOf(problem, settled), unsettledM };
}

/** The point mass has no axles to load. */
function withoutLoads(
  problem: ZoneProblem,
  schedule: GearSchedule,
): ReturnType<typeof settleLoads> {
  const solved = solveProfile(problem, schedule, problem.car.driver.releaseNps);
  const settled = settledZone(problem, schedule, solved);
  return { ...settled, downshifts: shiftsOn(problem, settled), unsettledM: 0 };
}

function fineRound(problem: ZoneProblem, settled: SettledZone, round: number): SettledZone {
  const { schedule, bounds, lateLoadN } = settled;
  const from = round < HALF_WAY_ROUND ? null : lateLoadN;
  const late = { ...problem, lateLoadN: lateLoadOf(problem, settled.zone, schedule, from) };
  const places = round === 1 ? 'new' : 'kept';
  const solved = solveEaseOnly(late, schedule, DEFAULT_STEP_M, bounds, places);
  return settledZone(late, schedule, solved, solved.bounds);
}

/** The zone anew, with the loads that are late on it as it was. */
function oneRound(
  problem: ZoneProblem,
  { zone, bounds }: SettledZone,
  schedule: GearSchedule,
  stepM: number,
): SettledZone {
  const late = { ...problem, lateLoadN: lateLoadOf(problem, zone, schedule) };
  const solved = solveEaseOnly(late, schedule, stepM, bounds);
  return settledZone(late, schedule, solved, solved.bounds);
}

function settledZone(
  problem: ZoneProblem,
  schedule: GearSchedule,
  solved: SolvedProfile,
  bounds: readonly ForceBound[] = [],
): SettledZone {
  const { lateLoadN = () => 0 } = problem;
  return { zone: withApplication(problem, schedule, solved), bounds, schedule, lateLoadN };
}

function gearsOf(problem: ZoneProblem, settled: SettledZone): GearSchedule {
  return scheduleOf(problem.corner, shiftsOn(problem, settled));
}

/** Where a zone as it came out has its downshifts. */
function shiftsOn(setting: ZoneSetting, { zone, lateLoadN }: SettledZone): Downshift[] {
  return planDownshifts({ ...setting, ...zone, lateLoadN });
}

/**
 * The downshifts of the schedule that the zone was solved in, moved to where the zone as it came out has them unless that
 * is another part of it.
 */
function shiftsOf(problem: ZoneProblem, settled: SettledZone): Downshift[] {
  const { corner } = problem;
  const downshifts = shiftsOn(problem, settled);
  const shiftsAtM = settled.schedule.slice(1).map(({ fromM }, i) => {
    const atM = downshifts[i]?.atM ?? fromM;
    return Math.abs(atM - fromM) < SAME_SHIFT_M ? atM : fromM;
  });
  const gears = { ...corner.gears, shiftsAtM };
  return shiftsOn({ ...problem, corner: { ...corner, gears } }, settled);
}

function withApplication(
  problem: ZoneProblem,
  schedule: GearSchedule,
  solved: SolvedProfile,
): AppliedZone {
  const { car, corner, model } = problem;
  const limits = {
    approachSpeedMps: corner.approachSpeedMps,
    riseS: car.driver.riseS,
    pitch: model === 'two-axle' ? pitchOf(problem, schedule) : null,
  };
  return { ...solved, ...findBrakePoint(solved.model, limits, solved.curve, -corner.approachM) };
}

function pitchOf({ car, axles, road }: ZoneSetting, schedule: GearSchedule): Pitch {
  return { car: axles, road, engineBraking: engineBrakingOf(car, schedule), hz: car.pitchHz };
}
