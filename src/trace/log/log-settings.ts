import type { ProfileProblem } from '../../profile/profile-problem.ts';
import type { ChosenColumn, ColumnWish } from './choose-columns.ts';
import type { DialectWish } from './log-dialect.ts';
import type { BrakeRole } from './logged-zone.ts';
import type { Notice } from './notices.ts';
import type { BrakeScale } from './spike-mender.ts';
import type { ZoneThresholds } from './zone-finder.ts';

/** What the user says about a log; null leaves it to the file. */
export interface LogWish extends DialectWish, ColumnWish {
  readonly brake: BrakeRole | null;
  readonly rateHz: number | null;
  readonly steeringPositive: 'left' | 'right' | null;
}

/** What was made of a log. */
export interface LogSummary {
  readonly rows: number;
  readonly zones: number;
  readonly durationS: number;
  /** Typical time from row to row. */
  readonly stepS: number;
  readonly brake: BrakeRole;
  readonly columns: readonly ChosenColumn[];
  /** Null where the log has no steering or nobody can say its sign. */
  readonly steeringPositive: 'left' | 'right' | null;
  readonly notices: readonly Notice[];
}

/** A log that cannot be used, with the places to mend. */
export class LogRefused extends Error {
  readonly problems: readonly ProfileProblem[];
  constructor(problems: readonly ProfileProblem[]) {
    super(problems[0]!.what);
    this.problems = problems;
  }
}

/** Beyond 300 bar, 5 kN or one and a half times full scale is no brake: common practice, no source. */
export const BRAKE_SCALES: Readonly<Record<BrakeRole, BrakeScale & ZoneThresholds>> = {
  'brake-level': { largest: 1.5, spike: 0.05, on: 0.05, off: 0.02 },
  'brake-front': { largest: 300e5, spike: 3e5, on: 4e5, off: 1.5e5 },
  'brake-rear': { largest: 300e5, spike: 3e5, on: 4e5, off: 1.5e5 },
  'pedal-force': { largest: 5000, spike: 40, on: 50, off: 20 },
};
