import { distanceText, speedText, type TextUnits } from '../unit-text.ts';
import type { AdviceBands } from './advice-bands.ts';
import { desirability } from './desirability.ts';
import { type Fault, fault, first, making } from './fault.ts';
import type { GripEvent, LiveMeasures, ScoredShift } from './live-measures.ts';
import { ANTI_LOCK_LIMITS_S, LOCKED_LIMITS_S } from './live-score-version.ts';
import type { ScoreParts } from './rep-score.ts';
import { speedOff, speedSide } from './slowest-speed.ts';

/** Something to tell, and what it cost. */
export interface Told {
  readonly lost: number;
  /** Null where it was right. */
  readonly fault: Fault | null;
}

/** The brake point is a tenth of the score: it is spoken of from half as many points as the rest. */
export const BRAKE_POINT_WEIGHT = 2;
/** An over-rev is no part of the score, but an engine is worth more than most faults of the foot. */
const OVER_REV_POINTS = 10;
/** Other faults of shifting, and a speed that is a little off, come behind all that costs points. */
export const SHIFT_POINTS = 4;
/** A distance that rounds to no metre is no distance. */
const LEAST_TOLD_M = 0.5;

/** What the live car has to tell beside release, hit and smooth, in points as they are compared. */
export function toldOfLive(
  live: LiveMeasures,
  pointsLost: ScoreParts,
  bands: AdviceBands,
  units: TextUnits,
): readonly Told[] {
  return [
    {
      lost: BRAKE_POINT_WEIGHT * (pointsLost.brakePoint ?? 0),
      fault: brakePointFault(live, units),
    },
    ...live.shifts.map((shift) => toldOfShift(shift, units)),
    { lost: live.missedDownshifts > 0 ? SHIFT_POINTS : 0, fault: missedFault(live) },
    {
      lost: speedOff(live, bands.slowestSpeed) === 'off' ? SHIFT_POINTS : 0,
      fault: speedFault(live, units),
    },
  ];
}

/** What wheels beyond their grip cost, where that was the worst of the smooth part; null where it was not. */
export function gripFault(live: LiveMeasures, smooth: number, units: TextUnits): Fault | null {
  const worst = worstOfGrip(live, smooth);
  if (worst === 'anti-lock')
    return first(
      fault('anti-lock still at work after turn-in: be out of it before', 'anti', 'lock'),
    );
  if (worst === null) return null;
  const words = `${lockUpWords(worst, units)}: ease, re-apply, carry on`;
  return first(fault(words, worst.axle, 'locked'));
}

/** What was the worst of the smooth part, where that was a matter of grip: the first lock-up, or anti-lock. */
export function worstOfGrip(live: LiveMeasures, smooth: number): GripEvent | 'anti-lock' | null {
  const locked = desirability(live.lockedS, LOCKED_LIMITS_S);
  const antiLock = desirability(live.antiLockTurnedS, ANTI_LOCK_LIMITS_S);
  const worst = Math.min(locked, antiLock);
  if (worst === 1 || worst > smooth) return null;
  return antiLock < locked ? 'anti-lock' : (live.lockUps[0] ?? null);
}

/** Which wheels, and where. */
export function lockUpWords(
  { axle, fromM }: Pick<GripEvent, 'axle' | 'fromM'>,
  units: TextUnits,
): string {
  return `${axle} wheels locked ${placeWords(fromM, units)}`;
}

/** How far from its target the brake came; null where it is less than half a metre. */
export function brakePointFault(
  { brakePointErrorM }: Pick<LiveMeasures, 'brakePointErrorM'>,
  units: TextUnits,
): Fault | null {
  const metres = Math.abs(brakePointErrorM);
  const side = brakePointErrorM > 0 ? 'late' : 'early';
  if (metres < LEAST_TOLD_M) return null;
  const makes = brakePointErrorM > 0 ? 'fast' : 'slow';
  return making(makes, fault(`braked ${distanceText(metres, units, 0)} ${side}`, 'braked', side));
}

/** A shift as something to tell, in points as they are compared. */
export function toldOfShift(shift: ScoredShift, units: TextUnits): Told {
  const { verdict, toGear } = shift;
  const laterM = safeLaterM(shift);
  const wait = laterM === null ? '' : `: ${distanceText(laterM, units, 0)} later is safe`;
  if (verdict === 'over-rev')
    return {
      lost: OVER_REV_POINTS,
      fault: first(fault(`over-revved in gear ${toGear}${wait}`, 'over', 'rev')),
    };
  if (verdict === 'too early') {
    const words = `down to gear ${toGear} too early, the rear let go${wait}`;
    return { lost: SHIFT_POINTS, fault: fault(words, 'shift', 'early') };
  }
  return verdict === 'late'
    ? { lost: SHIFT_POINTS, fault: fault(`down to gear ${toGear} late`, 'shift', 'late') }
    : { lost: 0, fault: null };
}

export function missedFault({
  missedDownshifts: count,
}: Pick<LiveMeasures, 'missedDownshifts'>): Fault | null {
  if (count === 0) return null;
  return fault(`${count} ${count === 1 ? 'downshift' : 'downshifts'} missing`, 'shift', 'missed');
}

/** How much later a shift would have been safe; null where that is nothing worth a word, or there is no such place. */
export function safeLaterM({ atM, earliestM }: ScoredShift): number | null {
  const laterM = earliestM === null ? 0 : earliestM - atM;
  return laterM < LEAST_TOLD_M ? null : laterM;
}

/** Too fast or too slow at the slowest point, by how much. */
export function speedFault(
  { slowestSpeedErrorMps: errorMps }: Pick<LiveMeasures, 'slowestSpeedErrorMps'>,
  units: TextUnits,
): Fault {
  const side = speedSide(errorMps);
  const words = `${speedText(Math.abs(errorMps), units)} too ${side} at the slowest point`;
  return making(side, fault(words, 'too', side));
}

/** A place on the road in words: before or after turn-in. */
export function placeWords(sM: number, units: TextUnits): string {
  if (Math.abs(sM) < LEAST_TOLD_M) return 'at turn-in';
  return `${distanceText(Math.abs(sM), units, 0)} ${sM < 0 ? 'before' : 'after'} turn-in`;
}
