import type { RoadMark } from '../../live/live-view.ts';
import { BIG_ROWS, bigNumber } from '../big-number.ts';
import type { Area, CellGrid } from '../cell-grid.ts';
import type { Look } from '../look.ts';

/** How long a board's number stands large after it was passed, s. */
const BEAT_S = 0.25;

/** The board whose number is to be read: the one just passed, large, or else the next; null beyond the last. */
export function boardBeat(
  marks: readonly RoadMark[],
  placeM: number,
  speedMps: number,
): { readonly word: string; readonly passed: boolean } | null {
  const boards = marks.filter(({ kind }) => kind === 'board');
  const passed = boards.findLast(({ sM }) => sM <= placeM && placeM < sM + BEAT_S * speedMps);
  const board = passed ?? boards.find(({ sM }) => sM > placeM);
  return board === undefined ? null : { word: board.word, passed: passed !== undefined };
}

/** The number in big digits; at the bar it grows to twice its size, which is the beat. */
export function drawBeat(
  grid: CellGrid,
  area: Area,
  beat: NonNullable<ReturnType<typeof boardBeat>>,
  scale: number,
  { theme }: Look,
): void {
  const grown = Math.min(2 * scale, Math.floor(area.rows / BIG_ROWS));
  const y = area.y + (beat.passed ? 0 : ((grown - scale) * BIG_ROWS) >> 1);
  const pen = beat.passed ? theme.strong : theme.text;
  bigNumber(grid, area.x, y, beat.word.replace(/\D/g, ''), pen, beat.passed ? grown : scale);
}
