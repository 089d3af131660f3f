import { weeksProgress } from '../../src/consistency/weeks/weeks-progress.ts';
import { seededRandom } from '../../src/drill/seeded-random.ts';
import { alongTime } from '../../src/report/picture/block-axis.ts';
import type {
  BlockReview,
  PracticeReview,
  ReviewedRep,
  SeriesReview,
} from '../../src/report/review/practice-review.ts';
import type { RepScore } from '../../src/score/rep-score.ts';
import { inventedWeeks } from '../consistency/invented-weeks.ts';
import { CONDITIONS, repsOf } from '../consistency/rep-measures.ts';
import { REPS, SUMMARY } from '../screens/sample-views.ts';

const SCORED = REPS[0]!.outcome as RepScore;

/** Ten invented reps and an aborted one; `text` stands wherever a string comes from outside. */
export function sampleBlock(text: string): BlockReview {
  const coupling = {
    level: Float64Array.of(0.8, 0.6, 0.4, 0.2, 0),
    steeringDeg: Float64Array.of(0, 10, 30, 60, 90),
  };
  const rep = (number: number): ReviewedRep => ({
    number,
    feedback: 'hidden',
    voided: null,
    outcome: { ...SCORED, score: 60 + number },
    words: text,
    call: text,
    selfRating: text,
    isDrawn: true,
    coupling,
  });
  const reps = Array.from({ length: 10 }, (_, i) => rep(i + 1));
  const aborted: ReviewedRep = {
    ...rep(11),
    voided: 'aborted',
    outcome: null,
    isDrawn: false,
    coupling: null,
  };
  const { grid } = SUMMARY.diagnosis.overlay;
  return {
    block: 2,
    phase: 'block',
    targetId: text,
    targetName: text,
    reps: [...reps, aborted],
    drawn: {
      kind: 'drawn',
      summary: SUMMARY,
      units: 'metric',
      along: alongTime(grid),
      target: coupling,
    },
  };
}

/** Twelve invented weeks with a missed one and new pedals. */
export function sampleSeries(text: string): SeriesReview {
  const reps = inventedWeeks(12, seededRandom(9), { factor: 0.3, missed: [5] }).map((rep) => ({
    ...rep,
    driver: text,
    targetId: text,
    conditions: {
      ...CONDITIONS,
      foot: text,
      condition: text,
      source: text,
      footwear: text,
      calibrationId: rep.day < '2026-09-21' ? 'old' : 'new',
    },
  }));
  const [progress] = weeksProgress(repsOf(reps), { today: '2026-11-26', weeks: null });
  return { progress: progress!, units: 'metric', spread: { kind: 'none', reason: text } };
}

export function sampleReview(text: string): PracticeReview {
  const block = sampleBlock(text);
  return {
    practice: { number: 7, driver: text, startedAt: text, conditions: [text, text] },
    blocks: [block, { ...block, phase: 'warm-up', drawn: { kind: 'not drawn', reason: text } }],
    series: [sampleSeries(text)],
    notes: [
      { at: text, about: text, text },
      { at: text, about: '', text: '' },
    ],
    cautions: [text],
  };
}
