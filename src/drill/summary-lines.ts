import { describeCause } from '../score/describe-cause.ts';
import type { BlockSummary } from './drill-view.ts';

/** A block's summary as lines of plain text. */
export function summaryLines(summary: BlockSummary): string[] {
  const { reps, aborted, medianScore, sentence } = summary;
  const counted = `${reps} ${reps === 1 ? 'rep' : 'reps'} scored${aborted > 0 ? `, ${aborted} aborted` : ''}`;
  if (medianScore === null) return [`block  ${counted}`];
  return [
    `block  ${counted}  median score ${Math.round(medianScore)}`,
    errorsText(summary),
    causeText(summary),
    sentence,
  ].filter((line) => line !== '');
}

function errorsText(summary: BlockSummary): string {
  const { medianReleaseErrorLevel, averageErrorLevel, spreadLevel } = summary;
  if (medianReleaseErrorLevel === null || averageErrorLevel === null) return '';
  const side = averageErrorLevel < 0 ? 'light' : 'heavy';
  const spread = spreadLevel === null ? 'from three reps on' : percent(spreadLevel);
  return [
    `       release error ${percent(medianReleaseErrorLevel)} of full scale`,
    `average error ${percent(Math.abs(averageErrorLevel))} ${side}`,
    `spread ${spread}`,
  ].join('  ');
}

function causeText({ cause, causeReps, reps }: BlockSummary): string {
  const words = cause === null ? '' : describeCause(cause);
  return words === '' ? '' : `       ${words} (${causeReps} of ${reps} reps)`;
}

function percent(level: number): string {
  return `${(100 * level).toFixed(1)} %`;
}
