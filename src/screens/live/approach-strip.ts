import type { RoadMark } from '../../live/live-view.ts';
import { type CellGrid, type Pen, putCell } from '../cell-grid.ts';
import type { Look } from '../look.ts';
import { type PlacedMark, spreadNames } from '../mark-labels.ts';
import { textWidth, writeText } from '../write-text.ts';
import type { StripLayout } from './live-layout.ts';
import { drawPost } from './strip-post.ts';
import { EIGHTHS, type StripScale, stripScale } from './strip-scale.ts';

const BAR = '█';
const BAR_NAME = 'you';

/** From back to front: what matters most is never covered. */
const ORDER: readonly RoadMark['kind'][] = ['turn-in', 'coach', 'board', 'brake'];
const PLAIN: Readonly<Record<RoadMark['kind'], string>> = {
  'turn-in': 'T',
  coach: 'C',
  board: '|',
  brake: 'B',
};

/**
 * The road ahead across the whole screen: marks close on the fixed bar, and one whose near edge touches it is where
 * the car is. Boards stand upright with their number above; the brake mark is as high and twice as wide; the coach's
 * mark hangs from above, turn-in lies on the ground.
 */
export function drawStrip(
  grid: CellGrid,
  layout: StripLayout,
  marks: readonly RoadMark[],
  placeM: number,
  look: Look,
): void {
  const scale = stripScale(grid.cols);
  writeText(grid, 0, layout.base, '─'.repeat(grid.cols), look.theme.quiet);
  for (const kind of ORDER)
    for (const mark of marks)
      if (mark.kind === kind) drawMark(grid, layout, mark, scale.eighths(mark.sM - placeM), look);
  drawNumbers(grid, layout, marks, placeM, scale, look);
  const named = (kinds: readonly RoadMark['kind'][]): readonly PlacedMark[] =>
    marks
      .filter(({ kind, sM }) => kinds.includes(kind) && sM >= placeM)
      .map(({ sM, word }) => ({ column: columnAt(scale, sM - placeM), name: word }));
  drawNames(grid, layout.above, named(['coach']), scale.barX, look.theme.text);
  drawNames(grid, layout.below, named(['brake', 'turn-in']), scale.barX, look.theme.target);
  drawBar(grid, layout, scale, look);
}

function drawMark(
  grid: CellGrid,
  { posts, numbers, base }: StripLayout,
  { kind }: RoadMark,
  eighth: number,
  { theme, unicode }: Look,
): void {
  const half = (posts.bottom - posts.top) >> 1;
  const pen = kind === 'brake' || kind === 'turn-in' ? theme.target : theme.text;
  const top = kind === 'turn-in' ? posts.bottom : kind === 'coach' ? numbers : posts.top;
  const bottom = kind === 'coach' ? posts.top + half - 1 : kind === 'brake' ? base : posts.bottom;
  const post = { eighth, cells: kind === 'brake' ? 2 : 1, pen, plain: PLAIN[kind] };
  drawPost(grid, post, top, bottom, unicode);
}

function columnAt(scale: StripScale, aheadM: number): number {
  return Math.floor(scale.eighths(aheadM) / EIGHTHS);
}

/** A board's number stays above it until it leaves the strip. */
function drawNumbers(
  grid: CellGrid,
  layout: StripLayout,
  marks: readonly RoadMark[],
  placeM: number,
  scale: StripScale,
  { theme }: Look,
): void {
  for (const { kind, sM, word } of marks) {
    const x = columnAt(scale, sM - placeM) - (word.length >> 1);
    if (kind === 'board') writeText(grid, x, layout.numbers, word, theme.strong);
  }
}

/** Names of marks that are still ahead, side by side. */
function drawNames(
  grid: CellGrid,
  row: number,
  marks: readonly PlacedMark[],
  barX: number,
  pen: Pen,
): void {
  const left = barX + BAR_NAME.length;
  const right = grid.cols - 1;
  const inside = marks.filter(({ column }) => column < right);
  const starts = spreadNames(inside, left, right);
  inside.forEach(({ name }, index) => {
    const start = starts[index]!;
    if (start >= left && start + textWidth(name) <= right) writeText(grid, start, row, name, pen);
  });
}

function drawBar(
  grid: CellGrid,
  { posts, base, below }: StripLayout,
  { barX }: StripScale,
  { theme }: Look,
): void {
  for (let row = posts.top; row <= base; row++)
    putCell(grid, barX, row, BAR.codePointAt(0)!, theme.driver);
  writeText(grid, barX - 1, below, BAR_NAME, theme.driver);
}
