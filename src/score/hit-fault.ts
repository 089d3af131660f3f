import type { AdviceBands } from './advice-bands.ts';
import { type Fault, fault, making } from './fault.ts';
import type { RepScore } from './rep-score.ts';
import { PEAK_LIMITS, RISE_LIMITS_S } from './score-version.ts';

/** What was different about a hit: its peak as a share of the target's, or its rise in seconds. */
interface HitDifference {
  readonly kind: 'peak' | 'rise';
  /** Too hard is positive, and so is too slow. */
  readonly size: number;
}

/** Of peak and rise what is further off against its limits; null where that is within its band. */
export function hitDifference(
  { peakError, riseErrorS }: Pick<RepScore, 'peakError' | 'riseErrorS'>,
  bands: AdviceBands,
): HitDifference | null {
  const peakShare = Math.abs(peakError) / PEAK_LIMITS.none;
  const riseShare = Math.abs(riseErrorS) / RISE_LIMITS_S.none;
  if (peakShare >= riseShare && Math.abs(peakError) > bands.peak)
    return { kind: 'peak', size: peakError };
  return Math.abs(riseErrorS) > bands.riseS ? { kind: 'rise', size: riseErrorS } : null;
}

/** The difference as something to tell. */
export function hitFault({ kind, size }: HitDifference): Fault {
  if (kind === 'peak') {
    const words = `hit ${Math.round(100 * Math.abs(size))} % too ${size > 0 ? 'hard' : 'light'}`;
    return making(size > 0 ? 'slow' : 'fast', fault(words, 'peak', size > 0 ? 'high' : 'low'));
  }
  const ms = 10 * Math.round(Math.abs(size) * 100);
  const words = `${ms} ms too ${size > 0 ? 'slow' : 'quick'} to the peak`;
  return making(size > 0 ? 'fast' : 'slow', fault(words, 'peak', size > 0 ? 'late' : 'early'));
}
