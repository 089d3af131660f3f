import { Problem } from '../problem.ts';
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import { type Line, pathOfLine } from './line.ts';
import { pointMassModel } from './point-mass.ts';
import { type BackwardPass, brakeToSlowest, DEFAULT_STEP_M } from './speed-profile.ts';

/** What a driver can know of a corner that nobody has driven yet. */
export interface FiveNumbers {
  readonly approachSpeedMps: number;
  readonly slowestSpeedMps: number;
  /** Brake point to slowest point. */
  readonly zoneLengthM: number;
  readonly turnRad: number;
  /** Gear at the slowest point. */
  readonly gear: number;
}

/** A place to brake, as far as five numbers go. All of it holds for the grip it was made with. */
export interface FiveNumberMarks {
  /** Friction taken for the car, braking and turning. */
  readonly grip: number;
  /** Brake point to slowest point with that grip: the zone asked for, where the line could be fitted to it. */
  readonly goalM: number;
  /** How much earlier the brake point is with 0.05 less grip. */
  readonly perGripM: number;
  /** The mark for the first lap: the brake point with 10 % less grip. */
  readonly firstLapM: number;
}

/** Of a modern racing tyre without downforce (common practice, no source). */
export const DEFAULT_GRIP = 1.4;
const GRIP_STEP = 0.05;
export const FIRST_LAP_GRIP = 0.9;
/** A first application of 0.2 s covers half of its own length at full speed before the limit is there. */
const RISE_S = 0.1;

/**
 * The smooth-apex line that five numbers ask for: the radius from slowest speed and grip, R = v^2 / (mu g), and the entry
 * from the length that the zone has over a straight stop, by a point mass on its friction circle without drag.
 *
 * @throws Problem (exit code 2) where the numbers contradict each other
 */
export function lineFromFiveNumbers(numbers: FiveNumbers, grip: number = DEFAULT_GRIP): Line {
  const { slowestSpeedMps, approachSpeedMps, zoneLengthM, turnRad } = numbers;
  if (slowestSpeedMps >= approachSpeedMps)
    throw new Problem('the slowest speed is not below the approach speed', {
      next: 'Braking has to take speed off; check both.',
      exitCode: 2,
    });
  const radiusM = slowestSpeedMps ** 2 / (grip * STANDARD_GRAVITY_MPS2);
  const lineOf = (entryM: number): Line => ({
    kind: 'smooth-apex',
    sign: 1,
    turnRad,
    radiusM,
    entryM,
    exitM: null,
  });
  // The entry turns half its length over the radius; some turn is left for the exit.
  const longestM = 1.8 * radiusM * turnRad;
  const shortestM = Math.min(SHORTEST_ENTRY_M, longestM / 2);
  const zone = (entryM: number): number => brakingDistanceM(lineOf(entryM), numbers, grip);
  if (zone(shortestM) > zoneLengthM)
    throw new Problem(
      `a zone of ${zoneLengthM.toFixed(0)} m is too short: straight-line braking with a grip of ${grip} takes ${zone(shortestM).toFixed(0)} m`,
      { next: 'Check speeds and length, or give the grip the car really has.', exitCode: 2 },
    );
  if (zone(longestM) < zoneLengthM) return lineOf(longestM);
  return lineOf(bisect((entryM) => zone(entryM) - zoneLengthM, shortestM, longestM));
}

const SHORTEST_ENTRY_M = 8;

function bisect(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The marks that go with a line: where to brake, how much that depends on grip, and where to start on the first lap. */
export function marksOfLine(line: Line, numbers: FiveNumbers, grip: number): FiveNumberMarks {
  const at = (mu: number): number => brakingDistanceM(line, numbers, mu);
  const goalM = at(grip);
  return {
    grip,
    goalM,
    perGripM: at(grip - GRIP_STEP) - goalM,
    firstLapM: at(FIRST_LAP_GRIP * grip),
  };
}

/** Brake point to slowest point of a point mass on a line that is driven as fast as the grip allows, m. */
export function brakingDistanceM(
  line: Line,
  { approachSpeedMps }: Pick<FiveNumbers, 'approachSpeedMps'>,
  grip: number,
): number {
  const { curvatureAt } = pathOfLine(line);
  const gripMps2 = grip * STANDARD_GRAVITY_MPS2;
  const car = {
    massKg: 1,
    alongMps2: gripMps2,
    acrossMps2: gripMps2,
    downforceShare: 0,
    dragPerMetre: 0,
  };
  const pass: BackwardPass = {
    slowestM: line.entryM,
    fromM: -(approachSpeedMps ** 2) / (2 * gripMps2),
    jointsM: [0],
    stepM: DEFAULT_STEP_M,
    releaseNps: Number.POSITIVE_INFINITY,
    stopAboveMps: approachSpeedMps,
  };
  const points = brakeToSlowest(pointMassModel(car, curvatureAt), pass);
  const first = points.findIndex(({ speedMps }) => speedMps <= approachSpeedMps);
  const after = points[Math.max(0, first)]!;
  const before = points[Math.max(0, first - 1)]!;
  const spread = before.speedMps ** 2 - after.speedMps ** 2;
  const share = spread > 0 ? (approachSpeedMps ** 2 - after.speedMps ** 2) / spread : 0;
  const atM = after.sM - share * (after.sM - before.sM);
  return line.entryM - atM + RISE_S * approachSpeedMps;
}
