import type { RepLine } from '../../drill/drill-view.ts';
import { fixed, percentText } from '../../number-text.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import { BIG_ROWS, bigNumber } from '../big-number.ts';
import type { Area, CellGrid } from '../cell-grid.ts';
import { drawGlance, glanceRows } from '../glance-words.ts';
import type { Look } from '../look.ts';
import { sentenceOf } from '../result-panel.ts';
import { wrapText, writeText } from '../write-text.ts';
import { brakePointText, slowestText } from './live-errors.ts';

/** Score, the one thing large where there is room, sentence, parts of the score, and how far brake point and slowest speed were off. */
export function drawLiveResult(grid: CellGrid, area: Area, result: RepLine, look: Look): void {
  const { theme, units } = look;
  let row = area.y;
  if (result.outcome !== null) {
    bigNumber(grid, area.x, row, fixed(result.outcome.score, 0), theme.strong);
    row += BIG_ROWS + 1;
  }
  const facts = result.outcome === null ? [] : factsOf(result.outcome, units);
  const room = area.y + area.rows - row - facts.length;
  const lines = wrapText(sentenceOf(result), area.cols).slice(0, room);
  const wordRows = glanceRows(result.glance, { cols: area.cols, rows: room - lines.length });
  if (wordRows > 0) drawGlance(grid, area, row, result.glance, theme.strong);
  row += wordRows;
  for (const line of lines) writeText(grid, area.x, row++, line, theme.strong);
  for (const fact of facts) writeText(grid, area.x, row++, fact, theme.text);
}

function factsOf(outcome: RepOutcome, units: Look['units']): readonly string[] {
  if (outcome.kind === 'no-rep') return [];
  const { parts, live } = outcome;
  const { brakePoint } = parts;
  return [
    `release ${percentText(parts.release)}, hit ${percentText(parts.hit)}`,
    `smooth ${percentText(parts.smooth)}`,
    ...(brakePoint === undefined ? [] : [`brake point ${percentText(brakePoint)}`]),
    ...(live === null
      ? []
      : [`braked ${brakePointText(live, units)}`, `slowest ${slowestText(live, units)}`]),
  ];
}
