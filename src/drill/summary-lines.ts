import { percentText } from '../number-text.ts';
import {
  causeSentence,
  firstRepSentence,
  hiddenSentence,
} from './diagnosis/diagnosis-sentences.ts';
import { phaseTable } from './diagnosis/phase-rows.ts';
import type { BlockSummary } from './drill-view.ts';

const INDENT = '       ';

/** A block's summary as lines of plain text. */
export function summaryLines(summary: BlockSummary): string[] {
  const { reps, aborted, medianScore, sentence, diagnosis } = summary;
  const counted = `${reps} ${reps === 1 ? 'rep' : 'reps'} scored${aborted > 0 ? `, ${aborted} aborted` : ''}`;
  if (medianScore === null) return [`block  ${counted}`];
  const indented = [
    errorsText(summary),
    summary.speedSentence,
    causeSentence(diagnosis.cause),
    ...phaseLines(summary),
    hiddenSentence(diagnosis.feedback),
    firstRepSentence(diagnosis.firstRep),
  ].filter((line) => line !== '');
  return [
    `block  ${counted}  median score ${Math.round(medianScore)}`,
    ...indented.map((line) => INDENT + line),
    sentence,
  ];
}

function errorsText(summary: BlockSummary): string {
  const { reps, medianReleaseErrorLevel, averageErrorLevel, spreadLevel } = summary;
  if (medianReleaseErrorLevel === null || averageErrorLevel === null) return '';
  const side = averageErrorLevel < 0 ? 'light' : 'heavy';
  const spread = spreadLevel === null ? whyNoSpread(reps) : `spread ${percentText(spreadLevel, 1)}`;
  return [
    `release error ${percentText(medianReleaseErrorLevel, 1)} of full scale`,
    `average error ${percentText(Math.abs(averageErrorLevel), 1)} ${side}`,
    spread,
  ].join('  ');
}

/** Reps of a varied target, or with a late call, differ because they have to. */
export function whyNoSpread(reps: number): string {
  return reps < 3
    ? 'spread from three reps on'
    : 'no spread: under three reps unvaried and uncalled';
}

/** One rep is no average yet. */
function phaseLines({ diagnosis: { overlay, phases } }: BlockSummary): string[] {
  if (overlay.reps.length < 2) return [];
  return [...phaseTable(phases)];
}
