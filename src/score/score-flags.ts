import type { RepRecord } from '../trace/rep-record.ts';
import { findOnset } from './onset.ts';
import type { KeyPoints, ScoreFlag } from './rep-score.ts';
import type { RepSignal } from './rep-signal.ts';
import { RATE_HZ } from './scoring-filter.ts';

const SHORTEST_BASELINE_S = 0.15;
const LONGEST_CLIP_S = 0.05;
const SECOND_HIT_S = 0.4;

/** Silence of a streaming device within the scored stretch, or samples that are no numbers. */
export function hasGap(record: RepRecord, fromS: number, toS: number): boolean {
  return (
    record.gaps.some((gap) => gap.toS > fromS && gap.fromS < toS) ||
    !record.brake.value.every(Number.isFinite) ||
    !record.brake.timeS.every(Number.isFinite)
  );
}

/**
 * Conditions that call for care with a scored rep. The sensor counts as clipped at the top only: at the bottom a foot
 * off the brake reads the same.
 */
export function scoreFlags(
  record: RepRecord,
  rep: RepSignal,
  onset: number,
  keys: KeyPoints,
  windowEndS: number,
): ScoreFlag[] {
  const end = Math.round((windowEndS - rep.startS) * RATE_HZ);
  const flags: ScoreFlag[] = [];
  if (hasGap(record, keys.onsetS, windowEndS)) flags.push('gap');
  if (isClipped(rep.raw.subarray(onset, end + 1))) flags.push('clipped');
  if (onset < SHORTEST_BASELINE_S * RATE_HZ) flags.push('short-baseline');
  if (hasSecondHit(rep, onset, end)) flags.push('double');
  if (keys.finalReleaseS === null) flags.push('not-released');
  return flags;
}

function isClipped(levels: Float64Array): boolean {
  let run = 0;
  return levels.some((level) => {
    run = level >= 1 ? run + 1 : 0;
    return run > LONGEST_CLIP_S * RATE_HZ;
  });
}

/** Off the brake and on it again, more than 400 ms after the first onset. */
function hasSecondHit(rep: RepSignal, onset: number, end: number): boolean {
  const levels = rep.levels.subarray(0, end + 1);
  const off = levels.findIndex((level, i) => i > onset && level < rep.threshold.offLevel);
  if (off < 0) return false;
  let second = findOnset(levels, rep.threshold, off);
  while (second !== null && second <= onset + SECOND_HIT_S * RATE_HZ) {
    const from = second;
    const next = levels.findIndex((level, i) => i > from && level < rep.threshold.offLevel);
    second = next < 0 ? null : findOnset(levels, rep.threshold, next);
  }
  return second !== null;
}
