import type { RepOutcome, RepScore } from '../score/rep-score.ts';
import type { RepLine } from './drill-view.ts';

/** One rep as a line of plain text, for a screen without a picture. */
export function repLine({ number, feedback, outcome, voided, sentence }: RepLine): string {
  const head = `rep ${String(number).padStart(2)}  ${feedback.padEnd(12)}`;
  if (voided !== null) return `${head}  does not count (${voided})  ${sentence}`.trimEnd();
  if (outcome === null) return `${head}  ··`;
  return `${head}  ${outcomeText(outcome)}  ${sentence}`.trimEnd();
}

function outcomeText(outcome: RepOutcome): string {
  const score = `score ${scoreText(outcome.score)}`;
  return outcome.kind === 'no-rep' ? score : `${score}  ${partsText(outcome)}`;
}

function partsText({ parts, reapplications }: RepScore): string {
  const { release, hit, smooth, brakePoint } = parts;
  const part = (name: string, share: number) => `${name} ${scoreText(100 * share)}`;
  return [
    part('release', release),
    part('hit', hit),
    part('smooth', smooth),
    ...(brakePoint === undefined ? [] : [part('brake point', brakePoint)]),
    `re-applied ${reapplications}`,
  ].join('  ');
}

function scoreText(score: number): string {
  return String(Math.round(score)).padStart(3);
}
