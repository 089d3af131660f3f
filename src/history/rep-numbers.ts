import type { RepNumbers } from '../consistency/rep-measure.ts';
import type { RepOutcome } from '../score/rep-score.ts';

/** The numbers of an outcome that the statistics ask for; null where a rep held nothing to be measured. */
export function repNumbers(outcome: RepOutcome): RepNumbers {
  if (outcome.kind === 'no-rep')
    return {
      score: 0,
      releaseErrorLevel: null,
      averageErrorLevel: null,
      startOfReleaseErrorS: null,
      peakError: null,
      reapplications: null,
    };
  return {
    score: outcome.score,
    releaseErrorLevel: outcome.releaseErrorLevel,
    averageErrorLevel: outcome.averageErrorLevel,
    startOfReleaseErrorS: outcome.keyPointErrorsS.startOfRelease,
    peakError: outcome.peakError,
    reapplications: outcome.reapplications,
  };
}
