import type { GearEvent, Target } from '../../target/target.ts';

/** What a driver has in mind of a braking zone: seconds from the first touch of the brake, levels, degrees. */
export interface BrakingIdea {
  levelAt(timeS: number): number;
  steeringDegAt(timeS: number): number;
  readonly peakS: number;
  readonly startOfReleaseS: number;
  readonly brakeOffS: number;
  readonly gears: readonly GearEvent[];
}

/** The idea of a driver who has the target before the eyes, or had. */
export function ideaOfTarget({ level, steering, marks, gears }: Target): BrakingIdea {
  const { peak, startOfRelease, brakeOff } = marks;
  return {
    levelAt: (timeS) => level.at(timeS),
    steeringDegAt: (timeS) => steering?.at(timeS) ?? 0,
    peakS: peak,
    startOfReleaseS: startOfRelease,
    brakeOffS: brakeOff,
    gears,
  };
}

interface Guess {
  readonly peakLevel: number;
  readonly holdS: number;
  readonly releaseS: number;
}

/** What a driver expects of a corner known by its type only. Common practice, no source. */
const GUESSES: Readonly<Record<string, Guess>> = {
  hairpin: { peakLevel: 0.8, holdS: 0.4, releaseS: 1.5 },
  'fast-sweeper': { peakLevel: 0.8, holdS: 0.2, releaseS: 1.2 },
  'decreasing-radius': { peakLevel: 0.75, holdS: 0.3, releaseS: 2 },
  'double-apex': { peakLevel: 0.7, holdS: 0.3, releaseS: 2 },
  'downhill-braking': { peakLevel: 0.7, holdS: 0.5, releaseS: 1.5 },
};
const ANY_CORNER: Guess = { peakLevel: 0.8, holdS: 0.3, releaseS: 1.4 };
const RISE_S = 0.18;

/** The idea of a driver who has never seen the target: up quickly, held, straight off again. */
export function guessedIdea(cornerType: string): BrakingIdea {
  const { peakLevel, holdS, releaseS } = GUESSES[cornerType] ?? ANY_CORNER;
  const startOfReleaseS = RISE_S + holdS;
  const brakeOffS = startOfReleaseS + releaseS;
  return {
    levelAt: (timeS) =>
      peakLevel * Math.max(0, Math.min(1, timeS / RISE_S, (brakeOffS - timeS) / releaseS)),
    steeringDegAt: () => 0,
    peakS: RISE_S,
    startOfReleaseS,
    brakeOffS,
    gears: [],
  };
}
