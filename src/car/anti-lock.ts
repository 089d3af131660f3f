import type { PerAxle } from './car.ts';

/** Where anti-lock steps in, as use of an axle's grip (1 is the limit). */
export interface AntiLockAxle {
  readonly releaseAtUse: number;
  /** Below the first, so that it does not chatter. */
  readonly reapplyAtUse: number;
}

/** Anti-lock brakes of a kind simple enough to drill with: a cap on each axle's use of grip. */
export interface AntiLock extends PerAxle<AntiLockAxle> {
  /** How fast it takes pressure away and gives it back, as a share of the driver's pressure per second. */
  readonly releasePerS: number;
  readonly reapplyPerS: number;
}

/** What anti-lock does at one axle. */
export interface AntiLockState {
  /** Share of the driver's pressure that gets through, 0..1. */
  readonly share: number;
  readonly phase: 'off' | 'releasing' | 'reapplying';
}

export const ANTI_LOCK_OFF: AntiLockState = { share: 1, phase: 'off' };

/**
 * The state after a time step: the share falls from where the use passes the release value until the use is under the
 * re-apply value, then rises until all pressure is back or the use passes the release value again. Null never steps in.
 *
 * @param use use of the axle's grip now, with the share of `state`
 */
export function antiLockAfter(
  antiLock: AntiLock | null,
  axle: 'front' | 'rear',
  state: AntiLockState,
  use: number,
  durationS: number,
): AntiLockState {
  if (antiLock === null) return ANTI_LOCK_OFF;
  const { releaseAtUse, reapplyAtUse } = antiLock[axle];
  const phase = nextPhase(state.phase, use, releaseAtUse, reapplyAtUse);
  if (phase === 'off') return ANTI_LOCK_OFF;
  if (phase === 'releasing')
    return { phase, share: Math.max(0, state.share - antiLock.releasePerS * durationS) };
  const share = state.share + antiLock.reapplyPerS * durationS;
  return share >= 1 ? ANTI_LOCK_OFF : { phase, share };
}

function nextPhase(
  phase: AntiLockState['phase'],
  use: number,
  releaseAtUse: number,
  reapplyAtUse: number,
): AntiLockState['phase'] {
  if (use > releaseAtUse) return 'releasing';
  return phase === 'releasing' && use < reapplyAtUse ? 'reapplying' : phase;
}
