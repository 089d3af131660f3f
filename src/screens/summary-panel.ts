import {
  causeSentence,
  firstRepSentence,
  hiddenVerdict,
  startSentence,
} from '../drill/diagnosis/diagnosis-sentences.ts';
import { phaseTable } from '../drill/diagnosis/phase-rows.ts';
import type { BlockSummary } from '../drill/drill-view.ts';
import { whyNoSpread } from '../drill/summary-lines.ts';
import { troubleSentence } from '../drill/trouble-sentence.ts';
import { countText, fixed, percentText } from '../number-text.ts';
import { BELOW_BLOCK_PLOT, drawBlockLegend, drawBlockPlot } from './block-plot.ts';
import type { Area, CellGrid, Pen } from './cell-grid.ts';
import type { Look } from './look.ts';
import { SCALE_COLS } from './plot-axes.ts';
import { fitText, wrapText, writeText } from './write-text.ts';

/**
 * What a block came to: its reps over each other, one sentence on what to change, and a small table by phase.
 * @param instead draws another picture in place of the reps, and says whether it did
 */
export function drawSummary(
  grid: CellGrid,
  area: Area,
  summary: BlockSummary,
  look: Look,
  instead: (area: Area) => boolean = () => false,
): void {
  const lines = summaryText(summary, area.cols, look);
  const text = area.y + area.rows - lines.length;
  const top = area.y + 1;
  const plot = {
    x: area.x + SCALE_COLS,
    y: top,
    cols: area.cols - SCALE_COLS,
    rows: text - BELOW_BLOCK_PLOT - top,
  };
  if (!instead({ ...area, y: top, rows: text - top })) {
    drawBlockLegend(grid, area.y, summary.diagnosis.overlay, look);
    drawBlockPlot(grid, plot, summary.diagnosis.overlay, look);
  }
  lines.forEach(([line, pen], row) => {
    writeText(grid, area.x, text + row, fitText(line, area.cols), pen);
  });
}

function summaryText(
  summary: BlockSummary,
  cols: number,
  { theme }: Look,
): readonly (readonly [string, Pen])[] {
  const { diagnosis, sentence } = summary;
  const beside = [
    hiddenVerdict(diagnosis.feedback),
    firstRepSentence(diagnosis.firstRep),
    startSentence(diagnosis.start),
  ];
  const cause = causeSentence(diagnosis.cause) || whyNoCause(summary);
  const [heading, ...rows] = phaseTable(diagnosis.phases);
  const inPen =
    (pen: Pen) =>
    (line: string): readonly [string, Pen] => [line, pen];
  return [
    ...wrapText(sentence, cols).map(inPen(theme.strong)),
    ...[headline(summary), troubleSentence(summary.troubles, summary.cause), cause, joined(beside)]
      .flatMap((line) => wrapText(line, cols))
      .map(inPen(theme.text)),
    inPen(theme.quiet)(heading),
    ...rows.map(inPen(theme.text)),
  ];
}

function joined(parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' · ');
}

function headline(summary: BlockSummary): string {
  const { reps, aborted, medianScore, medianReleaseErrorLevel, spreadLevel } = summary;
  const counted = `${countText(reps, 'rep')}${aborted === 0 ? '' : `, ${aborted} aborted`}`;
  if (medianScore === null) return joined([counted, 'score not known: no rep was scored']);
  return joined([
    counted,
    `median score ${fixed(medianScore, 0)}`,
    medianReleaseErrorLevel === null
      ? 'release error not known'
      : `release error ${percentText(medianReleaseErrorLevel, 1)} rms`,
    spreadLevel === null ? whyNoSpread(reps) : `spread ${percentText(spreadLevel, 1)}`,
  ]);
}

function whyNoCause({ cause, reps, troubles }: BlockSummary): string {
  // the sentence has said it, or there is something else to say
  if (reps < 3 || troubles.length > 0) return '';
  return cause === null
    ? 'no cause: timing, rate and amount are not alike in three reps'
    : 'no cause that can be felt: what is alike in the reps is too small';
}
