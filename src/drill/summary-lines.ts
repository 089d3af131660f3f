import type { BlockSummary } from './drill-view.ts';

/** A block's summary as lines of plain text. */
export function summaryLines(summary: BlockSummary): string[] {
  const { reps, aborted, medianScore, sentence } = summary;
  const counted = `${reps} ${reps === 1 ? 'rep' : 'reps'} scored${aborted > 0 ? `, ${aborted} aborted` : ''}`;
  if (medianScore === null) return [`block  ${counted}`];
  return [
    `block  ${counted}  median score ${Math.round(medianScore)}`,
    errorsText(summary),
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

function percent(level: number): string {
  return `${(100 * level).toFixed(1)} %`;
}
