import type { DerivedTarget } from '../target/derive/derive-target.ts';
import { LEAD_IN_S } from './live-zone.ts';

/** The board at which a late call usually comes, m before turn-in. */
const BOARD_M = 150;
/** Least time between a call and the first brake point, s: to hear, to decide and to act (common practice, no source). */
const LEAST_LEAD_S = 0.7;
/** Nothing is said in the first half second of rolling. */
const QUIET_S = 0.5;

/**
 * Where a late call comes, m from turn-in: at the 150 m board, earlier where a brake point lies too close behind it or
 * before it.
 */
export function callPlaceM(after: DerivedTarget, before: DerivedTarget): number {
  const { approachSpeedMps } = before.corner;
  const firstBrakeM = Math.min(after.zone.brakePointM, before.zone.brakePointM);
  const rollFromM = before.zone.brakePointM - LEAD_IN_S * approachSpeedMps;
  const wanted = Math.min(-BOARD_M, firstBrakeM - LEAST_LEAD_S * approachSpeedMps);
  return Math.max(rollFromM + QUIET_S * approachSpeedMps, wanted);
}
