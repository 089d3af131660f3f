import { percentText, tenths } from '../../number-text.ts';
import { feltSentences } from './felt-sentences.ts';
import type { WeeksProgress } from './weeks-progress.ts';

/** What practice by practice is known, a sentence each; levels in % of full scale. */
export function practiceSentences(progress: WeeksProgress): string[] {
  return [
    ...errorSentences(progress),
    ...rangeSentences(progress),
    ...curveSentences(progress),
    ...feltSentences(progress.felt),
  ];
}

function errorSentences(progress: WeeksProgress): string[] {
  const { typicalErrorLevel, typicalErrorInterval: interval, worthwhile } = progress;
  if (typicalErrorLevel === null || interval === null || worthwhile === null) return [];
  const between = `${tenths(interval.low)} to ${percentText(interval.high, 1)}`;
  return [
    `A practice median strays by ${percentText(typicalErrorLevel, 1)} without any change (typical error, ${between} with ${Math.round(100 * interval.level)} % confidence); between two practices less than ${percentText(worthwhile.clear, 1)} is unclear.`,
  ];
}

function rangeSentences({ repeatability }: WeeksProgress): string[] {
  if (repeatability === null) return [];
  const { repeatabilityLimit, reproducibilityLimit } = repeatability;
  return [
    `95 of 100 times the average errors of two hidden reps differ by less than ${percentText(repeatabilityLimit, 1)} within a practice, ${percentText(reproducibilityLimit, 1)} across practices.`,
  ];
}

function curveSentences({ curve }: WeeksProgress): string[] {
  if (curve === null) return [];
  const { chosen, plateau, missingForPlateau, points } = curve;
  if (chosen === null)
    return [`Practice curve: ${points} practices cannot tell which curve it is.`];
  if (chosen.gain === null)
    return [
      // a curve pays for more parameters than a level: that the level wins is no proof of no gain
      `Practice curve: ${points} practices do not tell a curve from a level line${missingForPlateau > 0 ? ' yet' : ''}.`,
    ];
  const end =
    plateau === null
      ? `a plateau can be told after ${missingForPlateau} more practices`
      : `it would level off near ${percentText(plateau, 1)}${errorText(chosen.plateauError)}`;
  return [
    `Practice curve: ${chosen.family === 'power' ? 'a power curve' : 'exponential'}; ${end}.`,
  ];
}

function errorText(error: number | null): string {
  return error === null ? '' : `, give or take ${tenths(error)}`;
}
