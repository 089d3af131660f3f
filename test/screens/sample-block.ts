import { type BlockDiagnosis, blockDiagnosis } from '../../src/drill/diagnosis/block-diagnosis.ts';
import { blockGrid } from '../../src/drill/diagnosis/block-grid.ts';
import type { DiagnosedRep } from '../../src/drill/diagnosis/diagnosed-rep.ts';
import type { Cause, RepScore } from '../../src/score/rep-score.ts';
import type { Target } from '../../src/target/target.ts';

/** Invented habits of ten reps: seconds late, share heavy, share of the release's length too long. */
const HABITS: readonly (readonly [number, number, number])[] = [
  [0.02, -0.08, -0.1],
  [0.06, 0.02, -0.18],
  [-0.03, 0.04, -0.22],
  [0.05, -0.02, -0.2],
  [0.01, 0.06, -0.16],
  [0.09, 0.01, -0.24],
  [0.03, -0.05, -0.19],
  [0, 0.03, -0.02],
  [0.07, 0, -0.21],
  [0.04, 0.05, -0.03],
];

/** Reps of a target made of habits, with outcomes that agree with them as far as the screen shows them. */
export function sampleDiagnosis(target: Target, base: RepScore): BlockDiagnosis {
  const reps = HABITS.map((habit, i) => sampleRep(target, base, habit, i + 1));
  const aborted = { place: 11, feedback: 'shown', voided: 'aborted', outcome: null } as const;
  return blockDiagnosis([...reps, { ...aborted, curve: null }], target);
}

function sampleRep(
  target: Target,
  base: RepScore,
  [lateS, heavy, long]: readonly [number, number, number],
  place: number,
): DiagnosedRep {
  const { startOfRelease, brakeOff } = target.marks;
  const releaseS = brakeOff - startOfRelease;
  const { fromS, stepS, target: levels } = blockGrid(target);
  const level = (timeS: number): number => {
    const sinceS = timeS - startOfRelease - lateS;
    const meant =
      sinceS < 0 ? Math.min(timeS, startOfRelease) : startOfRelease + sinceS / (1 + long);
    return (1 + heavy) * target.level.at(meant);
  };
  const cause: Cause | null =
    long > -0.1
      ? null
      : { kind: 'rate', timingS: 0, rateRatio: 1 + long, amountRatio: 1, explained: 0.8 };
  const outcome: RepScore = {
    ...base,
    score: 90 + 90 * long - 100 * Math.abs(heavy),
    releaseErrorLevel: 0.02 + Math.abs(long) / 6,
    peakError: heavy,
    keyPointErrorsS: {
      startOfRelease: lateS,
      halfRelease: lateS + 0.4 * long * releaseS,
      finalRelease: lateS + 0.85 * long * releaseS,
      brakeOff: lateS + long * releaseS,
    },
    cause,
  };
  return {
    place,
    feedback: place < 4 || place % 2 === 1 ? 'shown' : 'hidden',
    voided: null,
    outcome,
    curve: levels.map((_, i) => level(fromS + i * stepS)),
  };
}
