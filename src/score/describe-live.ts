import type { AdviceBands } from './advice-bands.ts';
import { desirability } from './desirability.ts';
import { type Fault, fault, first, making } from './fault.ts';
import type { LiveMeasures, ScoredShift } from './live-measures.ts';
import { ANTI_LOCK_LIMITS_S, LOCKED_LIMITS_S } from './live-score-version.ts';
import type { ScoreParts } from './rep-score.ts';
import { type SpokenUnits, speedOff, speedSide, speedText } from './slowest-speed.ts';

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
const SHIFT_POINTS = 4;

/** What the live car has to tell beside release, hit and smooth, in points as they are compared. */
export function toldOfLive(
  live: LiveMeasures,
  pointsLost: ScoreParts,
  bands: AdviceBands,
  units: SpokenUnits,
): readonly Told[] {
  return [
    { lost: BRAKE_POINT_WEIGHT * (pointsLost.brakePoint ?? 0), fault: brakePointFault(live) },
    ...live.shifts.map(toldOfShift),
    { lost: live.missedDownshifts > 0 ? SHIFT_POINTS : 0, fault: missedFault(live) },
    {
      lost: speedOff(live, bands.slowestSpeed) === 'off' ? SHIFT_POINTS : 0,
      fault: speedFault(live, units),
    },
  ];
}

/** What wheels beyond their grip cost, where that was the worst of the smooth part; null where it was not. */
export function gripFault(live: LiveMeasures, smooth: number): Fault | null {
  const locked = desirability(live.lockedS, LOCKED_LIMITS_S);
  const antiLock = desirability(live.antiLockTurnedS, ANTI_LOCK_LIMITS_S);
  const worst = Math.min(locked, antiLock);
  if (worst === 1 || worst > smooth) return null;
  if (antiLock < locked)
    return first(
      fault('anti-lock still at work after turn-in: be out of it before', 'anti', 'lock'),
    );
  const lockUp = live.lockUps[0];
  if (lockUp === undefined) return null;
  const words = `${lockUp.axle} wheels locked ${placeWords(lockUp.fromM)}: ease, re-apply, carry on`;
  return first(fault(words, lockUp.axle, 'locked'));
}

/** How far from its target the brake came; null where it is less than half a metre. */
export function brakePointFault({
  brakePointErrorM,
}: Pick<LiveMeasures, 'brakePointErrorM'>): Fault | null {
  const metres = Math.round(Math.abs(brakePointErrorM));
  const side = brakePointErrorM > 0 ? 'late' : 'early';
  if (metres === 0) return null;
  const makes = brakePointErrorM > 0 ? 'fast' : 'slow';
  return making(makes, fault(`braked ${metres} m ${side}`, 'braked', side));
}

function toldOfShift({ verdict, toGear, atM, earliestM }: ScoredShift): Told {
  const laterM = earliestM === null ? 0 : Math.round(earliestM - atM);
  const wait = laterM > 0 ? `: ${laterM} m later is safe` : '';
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

function missedFault({ missedDownshifts: count }: LiveMeasures): Fault | null {
  if (count === 0) return null;
  return fault(`${count} ${count === 1 ? 'downshift' : 'downshifts'} missing`, 'shift', 'missed');
}

/** Too fast or too slow at the slowest point, by how much. */
export function speedFault(
  { slowestSpeedErrorMps: errorMps }: LiveMeasures,
  units: SpokenUnits,
): Fault {
  const side = speedSide(errorMps);
  const words = `${speedText(errorMps, units)} too ${side} at the slowest point`;
  return making(side, fault(words, 'too', side));
}

function placeWords(sM: number): string {
  const metres = Math.round(Math.abs(sM));
  if (metres === 0) return 'at turn-in';
  return `${metres} m ${sM < 0 ? 'before' : 'after'} turn-in`;
}
