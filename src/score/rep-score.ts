import type { LiveMeasures } from './live-measures.ts';

/** The parts of the score as desirabilities, 1 is as good as can be asked. */
export interface ScoreParts {
  readonly release: number;
  readonly hit: number;
  readonly smooth: number;
  /** Only in version 2: a drill over time has no place to brake at. */
  readonly brakePoint?: number;
}

/** The named causes, and the shape that none of them explains. */
export type CauseKind = 'timing' | 'rate' | 'amount' | 'shape';

/**
 * What was different about the release, by the smallest model that explains it.
 */
export interface Cause {
  readonly kind: CauseKind;
  /** Positive is late. */
  readonly timingS: number;
  /** Time that the release took over the target's: above 1 is slow. Called after its cause, as it is stored. */
  readonly rateRatio: number;
  /** Level over the target's: above 1 is heavy. */
  readonly amountRatio: number;
  /** Share of the squared error that the model explains, 0..1. */
  readonly explained: number;
}

/** Key points found in a rep by the estimator that is also run on the target; seconds in the record's time. */
export interface KeyPoints {
  readonly onsetS: number;
  readonly peakS: number;
  readonly peakLevel: number;
  /** First time at 90 % of the peak. */
  readonly nearPeakS: number;
  /** Null, like those that follow, where the pressure never fell that far in the record. */
  readonly startOfReleaseS: number | null;
  readonly halfReleaseS: number | null;
  readonly finalReleaseS: number | null;
  readonly brakeOffS: number | null;
}

/** Conditions under which a number is to be read with care or is not given. */
export type ScoreFlag = 'gap' | 'clipped' | 'short-baseline' | 'double' | 'not-released';

/** Measured beside the score, never part of it. Null where the rig or the rep does not offer it. */
export interface SideMeasures {
  /** Cue to onset of braking; negative is before the cue. */
  readonly startErrorS: number | null;
  /** Throttle fully lifted to onset of braking. */
  readonly liftToHitS: number | null;
  /** Time with brake and throttle both above 5 %. */
  readonly overlapS: number | null;
  /** Median level before the onset: the weight of a resting foot. */
  readonly restingLevel: number;
  /** Largest pressure ripple within 150 ms of a shift, as a level. */
  readonly shiftRippleLevel: number | null;
  /** Steering through 50 % of its largest angle to brake through 50 %: positive when the wheel is later. */
  readonly steeringLagS: number | null;
}

/** A scored rep. Levels are 0..1 of full scale. */
export interface RepScore {
  readonly kind: 'scored';
  readonly version: number;
  /** 0..100. */
  readonly score: number;
  readonly parts: ScoreParts;
  /** Points lost to each part; they add up to 100 - score. */
  readonly pointsLost: ScoreParts;
  /** Root mean square difference over the release window. */
  readonly releaseErrorLevel: number;
  /** Mean signed difference over the release window: positive is heavy. */
  readonly averageErrorLevel: number;
  /** The best an on/off foot could do on this target. */
  readonly onOffErrorLevel: number;
  /** Share of the release window inside the corridor. */
  readonly inCorridor: number;
  /** (peak - target peak) / target peak. */
  readonly peakError: number;
  /** Rise time minus the target's. */
  readonly riseErrorS: number;
  /** Times the pressure went back up during the release. */
  readonly reapplications: number;
  /** Height of all re-applications together, as a share of the release. */
  readonly reapplied: number;
  /** Steepest rate of the release over the target's: above 1 is steeper. The ratio of a cause is one of times. */
  readonly rateRatio: number | null;
  /** Smoothness of the release (spectral arc length) minus the target's; secondary, not scored. */
  readonly smoothnessDifference: number | null;
  readonly keyPoints: KeyPoints;
  /** Rep minus target, by the same estimator; null where the rep never got there. */
  readonly keyPointErrorsS: {
    readonly startOfRelease: number | null;
    readonly halfRelease: number | null;
    readonly finalRelease: number | null;
    readonly brakeOff: number | null;
  };
  readonly cause: Cause | null;
  readonly side: SideMeasures;
  /** What the live car knows; null in version 1. */
  readonly live: LiveMeasures | null;
  readonly flags: readonly ScoreFlag[];
}

/** Why a record holds no rep that could be measured. It still counts, with 0 points. */
export type NoRepReason =
  | 'never braked'
  | 'peak below a tenth of the target'
  | 'too few samples'
  /** Only where the wheel paces the release: it asked for none. */
  | 'wheel never turned in'
  /** Only the live car: it was so late that the corner left nothing to brake with. */
  | 'braked too late'
  /** Only the live car: it stood before there was anything to release. */
  | 'stopped before the release';

export interface NoRep {
  readonly kind: 'no-rep';
  readonly version: number;
  readonly score: 0;
  readonly reason: NoRepReason;
  readonly side: SideMeasures | null;
  readonly flags: readonly ScoreFlag[];
}

export type RepOutcome = RepScore | NoRep;
