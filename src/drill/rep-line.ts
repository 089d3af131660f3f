import type { LiveMeasures } from '../score/live-measures.ts';
import type { RepOutcome, RepScore } from '../score/rep-score.ts';
import { distanceText, speedText, type TextUnits } from '../unit-text.ts';
import type { RepLine } from './drill-view.ts';

/** One rep as a line of plain text, for a screen without a picture. */
export function repLine(
  { number, feedback, outcome, voided, call, sentence }: RepLine,
  units: TextUnits = 'metric',
): string {
  const head = `rep ${String(number).padStart(2)}  ${feedback.padEnd(12)}`;
  if (voided !== null) return `${head}  does not count (${voided})  ${sentence}`.trimEnd();
  if (outcome === null) return `${head}  ··`;
  const called = call === null ? '' : `  called ${call}`;
  return `${head}  ${outcomeText(outcome, units)}${called}  ${sentence}`.trimEnd();
}

function outcomeText(outcome: RepOutcome, units: TextUnits): string {
  const score = `score ${scoreText(outcome.score)}`;
  if (outcome.kind === 'no-rep') return score;
  const parts = `${score}  ${partsText(outcome)}`;
  return outcome.live == null ? parts : `${parts}  ${errorsText(outcome.live, units)}`;
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

/** Where the live car was braked and how fast it was at its slowest, against the target. */
function errorsText(
  { brakePointErrorM, slowestSpeedErrorMps }: LiveMeasures,
  units: TextUnits,
): string {
  const place = `braked ${withSign(distanceText(brakePointErrorM, units))}`;
  return `${place}  slowest ${withSign(speedText(slowestSpeedErrorMps, units))}`;
}

/** A difference of nothing is not below either. */
function withSign(text: string): string {
  return text.startsWith('-') ? text : `+${text}`;
}

function scoreText(score: number): string {
  return String(Math.round(score)).padStart(3);
}
