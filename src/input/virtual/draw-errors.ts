import type { Feedback } from '../../drill/drill-view.ts';
import { seededRandom } from '../../drill/seeded-random.ts';
import type { BrakingIdea } from './braking-idea.ts';
import { type DriverPreset, errorShare, type Habit } from './driver-preset.ts';
import { fairDraws } from './fair-draws.ts';
import type { Reapplication, RepErrors } from './rep-errors.ts';

/** Without the own trace before the eyes errors grow a little; without the target they grow a lot. */
const FEEDBACK_FACTOR: Readonly<Record<Feedback, number>> = {
  shown: 0.95,
  hidden: 1.05,
  'first-of-day': 1.4,
};

/** Draws the errors of one rep after `reps` reps of practice; `loss` makes all of them larger, 1 where left out. */
export type ErrorDraw = (
  idea: BrakingIdea,
  reps: number,
  feedback: Feedback,
  loss?: number,
) => RepErrors;

/** A driver's errors, one kind independent of the other. */
export function errorDraw(preset: DriverPreset, seed: number): ErrorDraw {
  const draws = (stream: number) => fairDraws(seededRandom(seed, stream));
  const [timing, rate, amount, rise] = [draws(1), draws(2), draws(3), draws(4)];
  const [bumps, places] = [draws(5), draws(6)];
  return (idea, reps, feedback, loss = 1) => {
    const share = errorShare(reps) * FEEDBACK_FACTOR[feedback] * loss;
    const drawn = ({ mean, spread }: Habit, z: number) => share * (mean + spread * z);
    const releaseS = idea.brakeOffS - idea.startOfReleaseS;
    return {
      timingS: releaseS * drawn(preset.timing, timing.normal()),
      timeRatio: Math.exp(drawn(preset.rate, rate.normal())),
      amountRatio: Math.exp(drawn(preset.amount, amount.normal())),
      riseRatio: Math.exp(drawn(preset.rise, rise.normal())),
      reapplication: reapplication(preset, idea, bumps.uniform(), places.uniform()),
    };
  };
}

/** A pump somewhere in the middle of the release; it lasts about as long as two corrections by eye. */
function reapplication(
  { reapplicationShare, reapplicationHeight }: DriverPreset,
  idea: BrakingIdea,
  chance: number,
  place: number,
): Reapplication | null {
  if (chance > reapplicationShare) return null;
  const releaseS = idea.brakeOffS - idea.startOfReleaseS;
  const heightLevel = reapplicationHeight * idea.levelAt(idea.startOfReleaseS);
  return { atS: (0.2 + 0.4 * place) * releaseS, lengthS: 0.3, heightLevel };
}
