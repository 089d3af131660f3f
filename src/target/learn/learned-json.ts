import type { LearnedCurve } from './learn-target.ts';
import { type LearnedSource, type LearnedWords, learnedFileOf } from './learned-file.ts';

/** Five decimals are finer than any pedal. */
const short = (levels: Float64Array): number[] =>
  Array.from(levels, (level) => Math.round(1e5 * level) / 1e5);

/** What was learned as one JSON object: the target file's keys, and the curves it was made of. */
export function learnedJson(
  curve: LearnedCurve,
  source: LearnedSource,
  words: LearnedWords,
): Record<string, unknown> {
  const { registered } = curve;
  return {
    target_file: learnedFileOf(curve, source, words),
    reps_count: source.used.length,
    unused_landmarks: registered.unused.map(({ name, reason }) => ({ landmark: name, reason })),
    miss_level: curve.missLevel,
    corridor_kind: curve.corridor.kind,
    curves: {
      from_s: registered.fromS - curve.riseS,
      step_s: registered.stepS,
      learned_level: short(curve.levels),
      mean_level: short(registered.mean),
      spread_level: short(registered.spread),
      band_level: short(curve.band),
    },
  };
}
