import type { GripEvent, LiveMeasures, ScoredShift } from '../../score/live-measures.ts';
import type {
  Cause,
  CauseKind,
  KeyPoints,
  NoRep,
  RepScore,
  ScoreFlag,
  ScoreParts,
  SideMeasures,
} from '../../score/rep-score.ts';
import {
  anyNumber,
  type Check,
  fields,
  listOf,
  oneOf,
  optional,
  orNull,
  text,
  whole,
  wordOf,
} from './shape.ts';

const numberOrNull = orNull(anyNumber);
const version = whole(1, 1_000_000);
const count = whole(0, 1_000_000);
const flags = listOf(
  wordOf<ScoreFlag>({
    gap: true,
    clipped: true,
    'short-baseline': true,
    double: true,
    'not-released': true,
  }),
  100,
);

const parts = fields<ScoreParts>({
  release: anyNumber,
  hit: anyNumber,
  smooth: anyNumber,
  brakePoint: optional(anyNumber),
});

const keyPoints = fields<KeyPoints>({
  onsetS: anyNumber,
  peakS: anyNumber,
  peakLevel: anyNumber,
  nearPeakS: anyNumber,
  startOfReleaseS: numberOrNull,
  halfReleaseS: numberOrNull,
  finalReleaseS: numberOrNull,
  brakeOffS: numberOrNull,
});

const cause = fields<Cause>({
  kind: wordOf<CauseKind>({ timing: true, rate: true, amount: true, shape: true }),
  timingS: anyNumber,
  rateRatio: anyNumber,
  amountRatio: anyNumber,
  explained: anyNumber,
});

const side = fields<SideMeasures>({
  startErrorS: numberOrNull,
  liftToHitS: numberOrNull,
  overlapS: numberOrNull,
  restingLevel: anyNumber,
  shiftRippleLevel: numberOrNull,
  steeringLagS: numberOrNull,
});

const gripEvents = listOf(
  fields<GripEvent>({
    kind: oneOf('lock-up', 'anti-lock'),
    axle: oneOf('front', 'rear'),
    fromM: anyNumber,
    fromS: anyNumber,
    toM: numberOrNull,
    toS: numberOrNull,
  }),
  100_000,
);

const shift = fields<ScoredShift>({
  fromGear: whole(0, 100),
  toGear: whole(0, 100),
  atM: anyNumber,
  earliestM: numberOrNull,
  verdict: wordOf<ScoredShift['verdict']>({
    safe: true,
    'too early': true,
    'over-rev': true,
    late: true,
  }),
  rpm: anyNumber,
});

const live = fields<LiveMeasures>({
  brakePointErrorM: anyNumber,
  brakePointErrorS: anyNumber,
  slowestSpeedMps: anyNumber,
  slowestSpeedErrorMps: anyNumber,
  startOfReleaseErrorM: numberOrNull,
  releaseSpeedErrorMps: anyNumber,
  apexLevel: numberOrNull,
  apexLevelError: numberOrNull,
  gripUse: anyNumber,
  lockUps: gripEvents,
  antiLock: gripEvents,
  lockedS: anyNumber,
  antiLockTurnedS: anyNumber,
  lengthenedM: anyNumber,
  shifts: listOf(shift, 10_000),
  missedDownshifts: count,
  timeLostS: numberOrNull,
  turnInErrorM: numberOrNull,
  steeringRatio: numberOrNull,
});

const scored = fields<RepScore>({
  kind: oneOf('scored'),
  version,
  score: anyNumber,
  parts,
  pointsLost: parts,
  releaseErrorLevel: anyNumber,
  averageErrorLevel: anyNumber,
  onOffErrorLevel: anyNumber,
  inCorridor: anyNumber,
  peakError: anyNumber,
  riseErrorS: anyNumber,
  reapplications: count,
  reapplied: anyNumber,
  rateRatio: numberOrNull,
  smoothnessDifference: numberOrNull,
  keyPoints,
  keyPointErrorsS: fields<RepScore['keyPointErrorsS']>({
    startOfRelease: numberOrNull,
    halfRelease: numberOrNull,
    finalRelease: numberOrNull,
    brakeOff: numberOrNull,
  }),
  cause: orNull(cause),
  side,
  live: optional(orNull(live)),
  flags,
});

const noRep = fields<NoRep>({
  kind: oneOf('no-rep'),
  version,
  score: oneOf(0),
  reason: text(200),
  side: orNull(side),
  flags,
});

/** One outcome of a rep, of any score version. */
export const outcomeShape: Check = (value, path) => {
  const isNoRep = (value as { readonly kind?: unknown } | null)?.kind === 'no-rep';
  return isNoRep ? noRep(value, path) : scored(value, path);
};
