import { median } from '../consistency/median.ts';
import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';

/** Hysteresis that tells the start of braking from a resting foot and from noise; absolute levels. */
interface OnsetRule {
  readonly highLevel: number;
  readonly lowLevel: number;
}

/** Least height above the baseline that counts as braking, and multiples of the baseline's noise. */
const LEAST_HIGH_LEVEL = 0.03;
const NOISE_MULTIPLE = 6;
/** Median absolute deviation to standard deviation of normal noise. */
const MAD_TO_SD = 1.4826;
/** How long the level has to stay above the low threshold. */
export const ONSET_CONFIRM_S = 0.02;

const TARGET_STEP_S = 0.0005;

/** Thresholds from the levels before the onset: double threshold, the higher max(3 %, 6 standard deviations). */
export function onsetRule(baseline: Float64Array): OnsetRule {
  const middle = median(baseline) ?? 0;
  const noise = MAD_TO_SD * (median(baseline.map((level) => Math.abs(level - middle))) ?? 0);
  const height = Math.max(LEAST_HIGH_LEVEL, NOISE_MULTIPLE * noise);
  return { highLevel: middle + height, lowLevel: middle + height / 2 };
}

/** The causal search for the onset: what it remembers between samples. */
export interface OnsetSearch {
  readonly rule: OnsetRule;
  readonly aboveLowS: number | null;
  readonly aboveHighS: number | null;
}

export function startOnsetSearch(
  rule: OnsetRule,
  level: number | null,
  fromS: number,
): OnsetSearch {
  const above = (threshold: number) => (level !== null && level > threshold ? fromS : null);
  return { rule, aboveLowS: above(rule.lowLevel), aboveHighS: above(rule.highLevel) };
}

interface OnsetProgress {
  readonly search: OnsetSearch;
  /** When the onset is certain; the onset itself is `search.aboveLowS`. Null while nothing was found. */
  readonly foundAtS: number | null;
  /** First sample that was not looked at. */
  readonly cursor: number;
}

/** Looks at the samples from `cursor` up to and including `untilS`. */
export function searchOnset(
  { rule, aboveLowS, aboveHighS }: OnsetSearch,
  track: Track,
  cursor: number,
  untilS: number,
): OnsetProgress {
  let low = aboveLowS;
  let high = aboveHighS;
  let i = cursor;
  const certainBy = (timeS: number) => high !== null && high + ONSET_CONFIRM_S <= timeS;
  for (; i < track.timeS.length && track.timeS[i]! <= untilS; i++) {
    const t = track.timeS[i]!;
    if (certainBy(t)) break;
    const level = track.value[i]!;
    low = level > rule.lowLevel ? (low ?? t) : null;
    high = low !== null && (high !== null || level > rule.highLevel) ? (high ?? t) : null;
  }
  const found = certainBy(Math.min(untilS, track.timeS[i] ?? untilS));
  return {
    search: { rule, aboveLowS: low, aboveHighS: high },
    foundAtS: found && high !== null ? high + ONSET_CONFIRM_S : null,
    cursor: i,
  };
}

/** Where a target's onset lies by the same rule without noise: where its rise passes the low threshold. */
export function targetOnsetS({ level, marks }: Target): number {
  const threshold = LEAST_HIGH_LEVEL / 2;
  let timeS = marks.rise;
  while (timeS < marks.peak && level.at(timeS) <= threshold) timeS += TARGET_STEP_S;
  return timeS;
}
