import type { BlockSummary } from '../drill/drill-view.ts';
import type { Cause } from '../score/rep-score.ts';
import type { Area, CellGrid } from './cell-grid.ts';
import type { Look } from './look.ts';
import { countText, percentText, signedPercentText, tidy } from './number-text.ts';
import { wrapText, writeText } from './write-text.ts';

const NAME_COLS = 26;

/** What a block came to, in a small table, and one sentence on what to change. */
export function drawSummary(
  grid: CellGrid,
  area: Area,
  summary: BlockSummary,
  { theme }: Look,
): void {
  let row = area.y;
  for (const [name, value] of summaryRows(summary)) {
    writeText(grid, area.x, row, name, theme.quiet);
    writeText(grid, area.x + NAME_COLS, row++, value, theme.text);
  }
  row++;
  for (const line of wrapText(summary.sentence, area.cols))
    writeText(grid, area.x, row++, line, theme.strong);
}

function summaryRows(summary: BlockSummary): readonly (readonly [string, string])[] {
  const aborted = summary.aborted === 0 ? '' : `, ${summary.aborted} aborted and not counted`;
  return [
    ['reps', `${summary.reps}${aborted}`],
    ['score, median', orWhy(summary.medianScore, (score) => `${tidy(score, 0)} points of 100`)],
    [
      'release error, median',
      orWhy(summary.medianReleaseErrorLevel, (level) => `${percentText(level)} of full scale, rms`),
    ],
    ['average error', orWhy(summary.averageErrorLevel, averageText)],
    [
      'spread between reps',
      summary.spreadLevel === null
        ? 'not known under three reps'
        : `${percentText(summary.spreadLevel)} of full scale`,
    ],
    ['cause', causeText(summary)],
  ];
}

function orWhy(value: number | null, text: (value: number) => string): string {
  return value === null ? 'not known: no rep was scored' : text(value);
}

function averageText(level: number): string {
  const side =
    Math.abs(level) < 0.0005
      ? ''
      : level > 0
        ? ', heavier than the target'
        : ', lighter than the target';
  return `${signedPercentText(level)} of full scale${side}`;
}

function causeText({ cause, causeReps, reps }: BlockSummary): string {
  if (cause === null) return 'none: no error is alike in three reps or more';
  return `${causeWords(cause)} (in ${causeReps} of ${countText(reps, 'rep')})`;
}

/** The named cause with its size. */
export function causeWords(cause: Cause): string {
  switch (cause.kind) {
    case 'timing':
      return `timing, ${tidy(Math.abs(cause.timingS), 2)} s ${cause.timingS > 0 ? 'late' : 'early'}`;
    case 'rate':
      return `rate, ${percentOff(cause.rateRatio)} too ${cause.rateRatio > 1 ? 'slow' : 'quick'}`;
    case 'amount':
      return `amount, ${percentOff(cause.amountRatio)} too ${cause.amountRatio > 1 ? 'heavy' : 'light'}`;
    case 'shape':
      return 'shape: neither timing nor rate nor amount alone';
  }
}

function percentOff(ratio: number): string {
  return `${tidy(100 * Math.abs(ratio - 1), 0)} %`;
}
