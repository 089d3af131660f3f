import type { HistoryStore, NewNote, NewRep, PracticeStart } from '../../src/history/store.ts';
import type { LiveStart } from '../../src/live/live-start.ts';
import type { NoRep, RepScore } from '../../src/score/rep-score.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';

/** 2026-11-25 18:30 in Berlin. */
export const EVENING_MS: number = Date.UTC(2026, 10, 25, 17, 30);

export function aPractice(changes: Partial<PracticeStart> = {}): PracticeStart {
  return {
    driver: 'Kim',
    startedAt: { utcMs: EVENING_MS, zone: 'Europe/Berlin', offsetMin: 60 },
    source: 'hid',
    foot: 'left',
    footwear: 'race boots',
    calibrationId: 'c0ffee',
    sensor: 'force',
    seed: 42,
    ...changes,
  };
}

/** A few samples on the grid on which the history keeps them. */
export const RECORD: RepRecord = {
  brake: { timeS: Float64Array.of(0, 0.001, 0.0021), value: Float64Array.of(0, 0.25, 0.5) },
  throttle: { timeS: Float64Array.of(0), value: Float64Array.of(1) },
  clutch: null,
  steering: { timeS: new Float64Array(0), value: new Float64Array(0) },
  buttons: [{ timeS: 0.002, control: 'left paddle', pressed: true, action: 'downshift' }],
  gaps: [{ fromS: 0.001, toS: 0.0021 }],
  brakeStepLevel: 1 / 4095,
  endS: 0.0025,
};

/** What a zone of the live car began with; temperatures that are no short decimals. */
export const LIVE_START: LiveStart = {
  discC: { front: 350 + 1 / 3, rear: 280.1 },
  padC: { front: 1 / 7, rear: 280 },
  call: 'damp',
  controls: { steering: true, throttle: false, clutch: false, paddles: true },
};

export function aRep(changes: Partial<NewRep> = {}): NewRep {
  return {
    at: { utcMs: EVENING_MS + 60_000, zone: 'Europe/Berlin', offsetMin: 60 },
    car: 'prototype',
    corner: 'kiln-hairpin',
    variant: 'qualifying',
    condition: 'dry',
    live: null,
    targetChange: null,
    targetId: 'hairpin',
    targetVersion: 'v-one',
    number: 1,
    block: 1,
    phase: 'block',
    order: 'blocked',
    feedback: 'shown',
    selfRating: null,
    voided: null,
    record: RECORD,
    outcome: aScore(),
    ...changes,
  };
}

export function aScore(changes: Partial<RepScore> = {}): RepScore {
  return {
    kind: 'scored',
    version: 1,
    score: 71.25,
    parts: { release: 0.62, hit: 0.94, smooth: 0.88 },
    pointsLost: { release: 24.5, hit: 2.25, smooth: 2 },
    releaseErrorLevel: 0.041,
    averageErrorLevel: -0.012,
    onOffErrorLevel: 0.138,
    inCorridor: 0.55,
    peakError: 0.02,
    riseErrorS: 0.015,
    reapplications: 2,
    reapplied: 0.07,
    rateRatio: 1.2,
    smoothnessDifference: null,
    keyPoints: {
      onsetS: 0.2,
      peakS: 0.4,
      peakLevel: 0.81,
      nearPeakS: 0.36,
      startOfReleaseS: 0.7,
      halfReleaseS: 1.2,
      finalReleaseS: 1.9,
      brakeOffS: 2.1,
    },
    keyPointErrorsS: {
      startOfRelease: 0.031,
      halfRelease: -0.02,
      finalRelease: -0.1,
      brakeOff: -0.12,
    },
    cause: { kind: 'rate', timingS: 0, rateRatio: 0.8, amountRatio: 1, explained: 0.9 },
    side: {
      startErrorS: 0.1,
      liftToHitS: null,
      overlapS: 0,
      restingLevel: 0.01,
      shiftRippleLevel: null,
      steeringLagS: -0.05,
    },
    live: null,
    flags: ['clipped'],
    ...changes,
  };
}

export const NO_REP: NoRep = {
  kind: 'no-rep',
  version: 1,
  score: 0,
  reason: 'never braked',
  side: null,
  flags: [],
};

export function aNote(changes: Partial<NewNote> = {}): NewNote {
  return {
    at: { utcMs: EVENING_MS + 90_000, zone: 'Europe/Berlin', offsetMin: 60 },
    driver: 'Kim',
    text: 'bump loads the rear',
    car: 'prototype',
    corner: 'kiln-hairpin',
    variant: 'qualifying',
    gear: 2,
    repId: null,
    ...changes,
  };
}

/** Starts one practice and adds reps to it. */
export function addAll(history: HistoryStore, reps: readonly NewRep[]): number[] {
  const practiceId = history.startPractice(aPractice());
  return reps.map((rep) => history.addRep(practiceId, rep));
}
