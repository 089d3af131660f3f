import { percentText } from '../number-text.ts';
import {
  causeSentence,
  firstRepSentence,
  hiddenSentence,
  startSentence,
} from './diagnosis/diagnosis-sentences.ts';
import { phaseTable } from './diagnosis/phase-rows.ts';
import type { BlockSummary } from './drill-view.ts';
import { troubleTexts } from './trouble-sentence.ts';

/** The widest row of phases takes nearly all of 80 columns. */
const INDENT = '  ';

/** A block's summary as lines of plain text. */
export function summaryLines(summary: BlockSummary): string[] {
  const { reps, aborted, medianScore, sentence, diagnosis } = summary;
  const counted = `${reps} ${reps === 1 ? 'rep' : 'reps'} scored${aborted > 0 ? `, ${aborted} aborted` : ''}`;
  if (medianScore === null) return [`block  ${counted}`];
  const indented = [
    ...errorLines(summary),
    ...troubleTexts(summary.troubles, summary.cause),
    causeSentence(diagnosis.cause),
    ...phaseLines(summary),
    hiddenSentence(diagnosis.feedback),
    firstRepSentence(diagnosis.firstRep),
    startSentence(diagnosis.start),
  ].filter((line) => line !== '');
  return [
    `block  ${counted}  median score ${Math.round(medianScore)}`,
    ...indented.map((line) => INDENT + line),
    sentence,
  ];
}

/** Why there is no spread takes a line of its own: 80 columns hold no more. */
function errorLines(summary: BlockSummary): string[] {
  const { reps, medianReleaseErrorLevel, averageErrorLevel, spreadLevel } = summary;
  if (medianReleaseErrorLevel === null || averageErrorLevel === null) return [];
  const side = averageErrorLevel < 0 ? 'light' : 'heavy';
  const errors = [
    `release error ${percentText(medianReleaseErrorLevel, 1)} of full scale`,
    `average error ${percentText(Math.abs(averageErrorLevel), 1)} ${side}`,
  ].join('  ');
  return spreadLevel === null
    ? [errors, whyNoSpread(reps)]
    : [`${errors}  spread ${percentText(spreadLevel, 1)}`];
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
