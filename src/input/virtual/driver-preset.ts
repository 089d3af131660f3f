/** An error that comes with habit and differs from rep to rep around it. */
export interface Habit {
  readonly mean: number;
  readonly spread: number;
}

/** How good a simulated driver is on the first rep, and how that changes. */
export interface DriverPreset {
  readonly name: DriverName;
  /** Of the release's length: negative starts to release early. */
  readonly timing: Habit;
  /** Logarithm of the release's length over the target's: negative is too quick. */
  readonly rate: Habit;
  /** Logarithm of the pressure over the target's: negative is too light. */
  readonly amount: Habit;
  /** Logarithm of the rise's length over the target's. */
  readonly rise: Habit;
  /** Share of reps with a re-application, and its height as a share of the peak. */
  readonly reapplicationShare: number;
  readonly reapplicationHeight: number;
}

export const DRIVER_NAMES = ['skilled', 'club', 'novice'] as const;
export type DriverName = (typeof DRIVER_NAMES)[number];

/**
 * The presets are set so that the median score of their first block on the bundled hairpin is about 93, 74 and 41:
 * what drivers of these abilities scored in a simulation of the score itself. Their errors are invented.
 */
export const DRIVER_PRESETS: Readonly<Record<DriverName, DriverPreset>> = {
  skilled: {
    name: 'skilled',
    timing: { mean: 0, spread: 0.012 },
    rate: { mean: -0.058, spread: 0.02 },
    amount: { mean: -0.01, spread: 0.015 },
    rise: { mean: 0.05, spread: 0.05 },
    reapplicationShare: 0,
    reapplicationHeight: 0,
  },
  club: {
    name: 'club',
    timing: { mean: 0, spread: 0.015 },
    rate: { mean: -0.172, spread: 0.025 },
    amount: { mean: -0.02, spread: 0.02 },
    rise: { mean: 0.15, spread: 0.1 },
    reapplicationShare: 0.2,
    reapplicationHeight: 0.16,
  },
  novice: {
    name: 'novice',
    timing: { mean: -0.01, spread: 0.01 },
    rate: { mean: -0.302, spread: 0.015 },
    amount: { mean: -0.03, spread: 0.01 },
    rise: { mean: 0.3, spread: 0.15 },
    reapplicationShare: 0.4,
    reapplicationHeight: 0.24,
  },
};

const PRACTICE_REPS = 60;
const LEAST_SHARE = 0.4;

/** What is left of a driver's errors after so many reps: practice takes them away exponentially, never all. */
export function errorShare(reps: number): number {
  return LEAST_SHARE + (1 - LEAST_SHARE) * Math.exp(-reps / PRACTICE_REPS);
}

/** The first reps of a practice settle about ten times as fast as practice teaches (J Mot Behav 45:231, 2013). */
const WARM_UP_REPS = PRACTICE_REPS / 10;
/** How much larger errors are on the first of them; invented. */
const WARM_UP_LOSS = 0.25;

/** By what errors are larger after so many reps of a practice: the transient loss of its beginning. */
export function warmUpFactor(repsOfPractice: number): number {
  return 1 + WARM_UP_LOSS * Math.exp(-repsOfPractice / WARM_UP_REPS);
}
