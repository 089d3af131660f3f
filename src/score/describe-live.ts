import { kmhFromMetresPerSecond, mphFromMetresPerSecond } from '../units.ts';
import { desirability } from './desirability.ts';
import { type Fault, fault } from './fault.ts';
import type { LiveMeasures, ScoredShift } from './live-measures.ts';
import { ANTI_LOCK_LIMITS_S, LOCKED_LIMITS_S } from './live-score-version.ts';
import type { ScoreParts } from './rep-score.ts';

/** What speeds are told in. */
export type SpokenUnits = 'metric' | 'imperial';

/** Something to tell, and what it cost. */
export interface Told {
  readonly lost: number;
  /** Null where it was right. */
  readonly fault: Fault | null;
}

/** The brake point is a tenth of the score: it is spoken of from half as many points as the rest. */
const BRAKE_POINT_WEIGHT = 2;
/** An over-rev is no part of the score, but an engine is worth more than most faults of the foot. */
const OVER_REV_POINTS = 10;
/** Other faults of shifting come behind all that costs points. */
const SHIFT_POINTS = 4;
/** Difference at the slowest point that is worth a word where nothing else was, as a share of the speed. */
const SPEED_SHARE = 0.05;
/** From here on it is worth more than a shift: the car would have run wide, or the next one is past. */
const WIDE_SHARE = 0.1;
const WIDE_POINTS = 5;

/** What the live car has to tell beside release, hit and smooth, in points as they are compared. */
export function toldOfLive(
  live: LiveMeasures,
  pointsLost: ScoreParts,
  units: SpokenUnits,
): readonly Told[] {
  return [
    { lost: BRAKE_POINT_WEIGHT * (pointsLost.brakePoint ?? 0), fault: brakePointFault(live) },
    ...live.shifts.map(toldOfShift),
    { lost: live.missedDownshifts > 0 ? SHIFT_POINTS : 0, fault: missedFault(live) },
    { lost: speedPoints(live), fault: speedFault(live, units) },
  ];
}

/** What wheels beyond their grip cost, where that was the worst of the smooth part; null where it was not. */
export function gripFault(live: LiveMeasures, smooth: number): Fault | null {
  const locked = desirability(live.lockedS, LOCKED_LIMITS_S);
  const antiLock = desirability(live.antiLockTurnedS, ANTI_LOCK_LIMITS_S);
  const worst = Math.min(locked, antiLock);
  if (worst === 1 || worst > smooth) return null;
  if (antiLock < locked)
    return fault('anti-lock still at work after turn-in: be out of it before', 'anti', 'lock');
  const first = live.lockUps[0];
  if (first === undefined) return null;
  const words = `${first.axle} wheels locked ${placeWords(first.fromM)}: ease, re-apply, carry on`;
  return fault(words, first.axle, 'locked');
}

function brakePointFault({ brakePointErrorM }: LiveMeasures): Fault | null {
  const metres = Math.round(Math.abs(brakePointErrorM));
  const side = brakePointErrorM > 0 ? 'late' : 'early';
  return metres === 0 ? null : fault(`braked ${metres} m ${side}`, 'braked', side);
}

function toldOfShift({ verdict, toGear, atM, earliestM }: ScoredShift): Told {
  const laterM = earliestM === null ? 0 : Math.round(earliestM - atM);
  const wait = laterM > 0 ? `: ${laterM} m later is safe` : '';
  if (verdict === 'over-rev')
    return {
      lost: OVER_REV_POINTS,
      fault: fault(`over-revved in gear ${toGear}${wait}`, 'over', 'rev'),
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

function speedPoints({ slowestSpeedMps, slowestSpeedErrorMps }: LiveMeasures): number {
  const share = Math.abs(slowestSpeedErrorMps) / (slowestSpeedMps - slowestSpeedErrorMps);
  if (share > WIDE_SHARE) return WIDE_POINTS;
  return share > SPEED_SHARE ? SHIFT_POINTS : 0;
}

function speedFault({ slowestSpeedErrorMps: error }: LiveMeasures, units: SpokenUnits): Fault {
  const inUnit = units === 'imperial' ? mphFromMetresPerSecond : kmhFromMetresPerSecond;
  const speed = `${Math.round(inUnit(Math.abs(error)))} ${units === 'imperial' ? 'mph' : 'km/h'}`;
  const side = error > 0 ? 'fast' : 'slow';
  return fault(`${speed} too ${side} at the slowest point`, 'too', side);
}

function placeWords(sM: number): string {
  const metres = Math.round(Math.abs(sM));
  if (metres === 0) return 'at turn-in';
  return `${metres} m ${sM < 0 ? 'before' : 'after'} turn-in`;
}
