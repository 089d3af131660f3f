import type { BrakeSplit } from '../car/brake-split.ts';
import { wheelbaseM } from '../car/chassis.ts';
import { circleLimitN } from '../car/circle-limit.ts';
import { axleFrictionFactor, type Tyre } from '../car/tyre.ts';
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

const CLOSE = 1e-10;
/** After a move this small a secant is closer than `CLOSE`: it misses by the product of its last two misses. */
const NEAR = 1e-6;
const MOST_ROUNDS = 8;

/**
 * The friction depends on the load and the load on the force: F = T(F), where T takes the friction at the load that F
 * leaves. A secant on F - T(F), which is nearly straight, is there in three or four rounds.
 */
function axleLimit(axle: Axle): AxleLimit {
  const { tyre, gripShare, movedPerNewton } = axle;
  const acrossToAlong = tyre.longitudinalFriction / tyre.lateralFriction;
  const mu = gripShare * tyre.longitudinalFriction;
  return (loadN, acrossN, engineN, mostN = Number.POSITIVE_INFINITY) => {
    const across = acrossN * acrossToAlong;
    if (tyre.loadSensitivity === 0)
      return Math.min(mostN, onPieces(axle, mu, loadN, across, engineN));
    const moved = acrossN * movedPerNewton;
    if (
      Number.isFinite(mostN) &&
      underLoad(axle, mu, loadN, across, moved, engineN, mostN) >= mostN
    )
      return mostN;
    let before = 0;
    let missBefore = -underLoad(axle, mu, loadN, across, moved, engineN, 0);
    let force = -missBefore;
    for (let round = 0; round < MOST_ROUNDS && Number.isFinite(force); round++) {
      const miss = force - underLoad(axle, mu, loadN, across, moved, engineN, force);
      if (Math.abs(miss) <= CLOSE * force || miss === missBefore) break;
      const next = force - (miss * (force - before)) / (miss - missBefore);
      before = force;
      missBefore = miss;
      force = Math.max(0, next);
      if (Math.abs(force - before) <= NEAR * force) break;
    }
    return Math.min(force, mostN);
  };
}

/** T: the limit with the friction of the load that a force leaves. */
function underLoad(
  axle: Axle,
  mu: number,
  loadN: number,
  across: number,
  moved: number,
  engineN: number,
  forceN: number,
): number {
  const load = loadN + axle.gain * (forceN + engineN);
  return onPieces(axle, mu * axleFrictionFactor(axle.tyre, load, moved), loadN, across, engineN);
}

/** With one friction: on the piece where the limit falls, whose offset acts on the axle as an engine does. */
function onPieces(
  { pieces, gain, engineShare }: Axle,
  mu: number,
  loadN: number,
  acrossN: number,
  engineN: number,
): number {
  let force = 0;
  for (let i = pieces.length - 1; i >= 0; i--) {
    const piece = pieces[i] as BrakeSplit[number];
    const heldN = engineN * engineShare + piece.offsetN;
    force = circleLimitN(mu, loadN, piece.share, acrossN, heldN, engineN, gain);
    if (force >= piece.fromN) return Math.min(force, pieces[i + 1]?.fromN ?? force);
  }
  return force;
}
