import type { BrakeSplit } from '../car/brake-split.ts';
import { wheelbaseM } from '../car/chassis.ts';
import { circleLimitN } from '../car/circle-limit.ts';
import { axleGripN, axleGripSlope, type Tyre } from '../car/tyre.ts';
import type { TwoAxleCar } from './two-axle.ts';

/**
 * Largest force along the whole car, N, before one axle leaves its friction ellipse, from the load and the lateral force
 * it has without that force, and the braking of the engine on both axles. Where it is more than `mostN`, that: to see
 * that an axle carries a force takes far less than to find the most that it carries.
 */
type AxleLimit = (loadN: number, acrossN: number, engineN: number, mostN?: number) => number;

/** One axle as the solver takes it. */
interface Axle {
  readonly tyre: Tyre;
  readonly gripShare: number;
  /** Load gained per newton along the car, negative where it loses load. */
  readonly gain: number;
  /** Load moved to the outer wheel per newton across. */
  readonly movedPerNewton: number;
  /** Share of the engine's braking on this axle. */
  readonly engineShare: number;
  /** This axle's part of the force along the car: straight pieces, rising. */
  readonly pieces: BrakeSplit;
}

/**
 * How much braking the front or the rear axle allows.
 * @param perNewton load that a newton along the car moves to the front axle; all that it moves in the end if left out
 */
export function brakeLimit(
  car: TwoAxleCar,
  side: 'front' | 'rear',
  perNewton: number = loadPerNewton(car),
): AxleLimit {
  const isFront = side === 'front';
  const split = car.brakeSplit ?? [{ fromN: 0, share: car.frontBrakeShare, offsetN: 0 }];
  return axleLimit({
    ...axleOf(car, side),
    gain: (isFront ? 1 : -1) * perNewton,
    engineShare: isFront ? car.frontDriveShare : 1 - car.frontDriveShare,
    pieces: isFront
      ? split
      : split.map(({ fromN, share, offsetN }) => ({ fromN, share: 1 - share, offsetN: -offsetN })),
  });
}

/** How much drive the front or the rear axle allows: load moves the other way, and an undriven axle only corners. */
export function driveLimit(car: TwoAxleCar, side: 'front' | 'rear'): AxleLimit {
  const isFront = side === 'front';
  const share = isFront ? car.frontDriveShare : 1 - car.frontDriveShare;
  return axleLimit({
    ...axleOf(car, side),
    gain: (isFront ? -1 : 1) * loadPerNewton(car),
    engineShare: 0,
    pieces: [{ fromN: 0, share, offsetN: 0 }],
  });
}

function axleOf(
  car: TwoAxleCar,
  side: 'front' | 'rear',
): Pick<Axle, 'tyre' | 'gripShare' | 'movedPerNewton'> {
  return {
    tyre: side === 'front' ? car.frontTyre : car.rearTyre,
    gripShare: car.gripShare,
    movedPerNewton: car.chassis.cgHeightM / car.trackM,
  };
}

/** Load that a newton along the car moves from one axle to the other once the pitch has settled. */
export function loadPerNewton({ chassis }: Pick<TwoAxleCar, 'chassis'>): number {
  return chassis.cgHeightM / wheelbaseM(chassis);
}

/** Of the force: what is missing after a move this small is its square, and lost in rounding. */
const CLOSE = 1e-5;
/** Enough to halve a bracket down to rounding; tangents take two or three. */
const MOST_ROUNDS = 100;
const NOWHERE = -1;
/** More than any car brakes with, N. */
const SURELY_TOO_MUCH_N = 1e9;

/** On the last straight piece on which the axle still holds. */
function axleLimit(axle: Axle): AxleLimit {
  const { pieces, gain, engineShare, tyre, movedPerNewton } = axle;
  const acrossToAlong = tyre.longitudinalFriction / tyre.lateralFriction;
  return (loadN, acrossN, engineN, mostN = Number.POSITIVE_INFINITY) => {
    const load = loadN + gain * engineN;
    const across = acrossN * acrossToAlong;
    const moved = acrossN * movedPerNewton;
    for (let i = pieces.length - 1; i >= 0; i--) {
      const piece = pieces[i] as BrakeSplit[number];
      if (i > 0 && piece.fromN > mostN) continue;
      const heldN = engineN * engineShare + piece.offsetN;
      const endN = Math.min(mostN, pieces[i + 1]?.fromN ?? mostN);
      const force = onPiece(axle, piece, load, across, moved, heldN, endN);
      if (force >= piece.fromN) return force;
    }
    return 0;
  };
}

/**
 * The force at which the axle leaves its ellipse, (s F + E)^2 + Y^2 = C(N + g F)^2, on one piece of the brake split, or the
 * end of the piece where it holds there.
 *
 * What the tyres carry, C, bends down as the load grows and lies below each of its tangents: with a tangent in its place
 * the force comes out too large, and less so each time. Where C bends up (a wheel lifts, or a load is beyond the line of
 * the friction) the way between what held and what did not is halved.
 */
function onPiece(
  { tyre, gripShare, gain }: Axle,
  { fromN, share }: BrakeSplit[number],
  load: number,
  across: number,
  moved: number,
  heldN: number,
  endN: number,
): number {
  const mu = gripShare * tyre.longitudinalFriction;
  // A straight line is its own tangent.
  if (tyre.loadSensitivity === 0)
    return Math.min(endN, circleLimitN(mu, load, share, across, heldN, 0, gain));
  let [low, high] = [NOWHERE, SURELY_TOO_MUCH_N];
  let force = Number.isFinite(endN) ? endN : fromN;
  for (let round = 0; round < MOST_ROUNDS && high - low > CLOSE ** 2 * high; round++) {
    if (force > SURELY_TOO_MUCH_N) return endN;
    const carried = mu * axleGripN(tyre, load + gain * force, moved);
    const along = share * force + heldN;
    const isHeld = carried >= 0 && along * along + across * across <= carried * carried;
    if (isHeld && force === endN) return endN;
    const slope = mu * gain * axleGripSlope(tyre, load + gain * force, moved);
    const next = circleLimitN(1, carried - slope * force, share, across, heldN, 0, slope);
    if (Math.abs(next - force) <= CLOSE * force) return Math.min(next, endN);
    if (isHeld) low = force;
    else if (next < force || next === Number.POSITIVE_INFINITY) high = force;
    force = forceToTry(next, force, fromN, low, high, load);
    if (force === NOWHERE) return NOWHERE;
  }
  return low;
}

/** The tangent's force where it lies between what held and what did not, or else one that narrows them. */
function forceToTry(
  next: number,
  force: number,
  fromN: number,
  low: number,
  high: number,
  load: number,
): number {
  if (next > Math.max(low, fromN) && next < high) return next;
  if (low < fromN) return force > fromN ? fromN : NOWHERE;
  return high < SURELY_TOO_MUCH_N ? (low + high) / 2 : 2 * force + load;
}
