import type { DrillView } from '../../drill/drill-view.ts';
import type { LiveView } from '../../live/live-view.ts';
import type { CellGrid } from '../cell-grid.ts';
import { flowItems } from '../flow-items.ts';
import { drawPictureName, drawRestPicture } from '../grip/rest-picture.ts';
import type { Look } from '../look.ts';
import { drawRepList } from '../rep-list.ts';
import { fitText, wrapText, writeText } from '../write-text.ts';
import { drawCarPanel, drawPlaceAlone } from './car-panel.ts';
import { eventWords } from './event-words.ts';
import { fadeWords } from './fade-words.ts';
import { drawLevelLane } from './level-lane.ts';
import { drawFooter } from './live-footer.ts';
import { type ZoneLayout, zoneLayout } from './live-layout.ts';
import { drawLiveResult } from './live-result.ts';
import { drawPlan } from './plan-picture.ts';
import { drawSteeringLane } from './steering-lane.ts';

/** The picture over distance, and once the rep is over its result and the corner from above. */
export function drawZone(grid: CellGrid, view: DrillView, live: LiveView, look: Look): void {
  const layout = zoneLayout(grid);
  const isOver = live.stage === 'over';
  const isRest = layout.planBeside || (view.phase !== 'result' && view.display.picture !== 'curve');
  const plan = isOver && isRest ? live.plan : null;
  if (plan === null || layout.planBeside) drawLanes(grid, layout, view, live, look);
  if (plan !== null && !drawRestPicture(grid, layout.plan, view, look)) {
    drawPictureName(grid, layout.plan, 'the corner from above, to scale', look);
    drawPlan(grid, layout.plan, plan, look);
  }
  drawSide(grid, layout, view, live, look);
  const taken = drawNotes(grid, layout, live, look);
  const reps = { ...layout.reps, y: layout.reps.y + taken, rows: layout.reps.rows - taken };
  drawRepList(grid, reps, view.lastReps, look, true);
  drawFooter(grid, view, layout.health, layout.keys, look);
}

function drawLanes(
  grid: CellGrid,
  layout: ZoneLayout,
  { feedback, display }: DrillView,
  live: LiveView,
  look: Look,
): void {
  const own = live.level.own !== null || feedback === 'shown';
  const target = live.level.target !== null;
  const level = { target, corridor: live.corridorLevel !== null && display.corridor, own };
  drawKey(grid, layout.headings, 'brake, %', level, look);
  const steering = { target, corridor: false, own: own && live.hasWheel };
  const x = drawKey(grid, layout.steeringHeading, 'steering, deg', steering, look);
  if (!live.hasWheel)
    writeText(grid, x, layout.steeringHeading, 'no wheel: braking only', look.theme.strong);
  drawLevelLane(grid, layout.level, live, display, look);
  drawSteeringLane(grid, layout.steering, live, look);
}

/** Name of a lane and what its lines are; returns the column after it. */
function drawKey(
  grid: CellGrid,
  row: number,
  name: string,
  lines: { readonly target: boolean; readonly corridor: boolean; readonly own: boolean },
  { theme, unicode }: Look,
): number {
  const [dash, dots, line] = unicode ? ['╌╌', '··', '━━'] : ['--', '..', '##'];
  let x = writeText(grid, 1, row, `${name}  `, theme.quiet);
  if (lines.target) x = writeText(grid, x, row, `${dash} target  `, theme.target);
  if (lines.corridor) x = writeText(grid, x, row, `${dots} corridor  `, theme.target);
  return lines.own ? writeText(grid, x, row, `${line} you  `, theme.driver) : x;
}

function drawSide(
  grid: CellGrid,
  { side }: ZoneLayout,
  view: DrillView,
  live: LiveView,
  look: Look,
): void {
  if (live.stage === 'over') {
    if (view.result !== null) drawLiveResult(grid, side, view.result, look);
    return;
  }
  if (live.call !== null)
    writeText(grid, side.x, side.y - 1, ` ${live.call.toUpperCase()} `, look.theme.alert);
  if (view.feedback === 'shown') drawCarPanel(grid, side, live, look);
  else drawPlaceAlone(grid, side, live, look);
}

/** Rows that the list of reps keeps when there is much to be said. */
const LEAST_REP_ROWS = 2;

/**
 * What happened; once the rep is over also what has to be said, with the force that the next one needs first.
 * Returns the rows of the list below that it took.
 */
function drawNotes(
  grid: CellGrid,
  { notes, reps }: ZoneLayout,
  live: LiveView,
  { theme, units }: Look,
): number {
  const isOver = live.stage === 'over';
  const items = [...(isOver ? fadeWords(live, units) : []), ...eventWords(live.events, units)];
  const lines = flowItems(items, notes.cols, '  ·  ').slice(0, notes.rows);
  const room = isOver ? notes.rows + reps.rows - LEAST_REP_ROWS : notes.rows;
  const said = isOver ? wholeRemarks(live.remarks, notes.cols, room - lines.length) : [];
  [...lines, ...said].forEach((line, index) => {
    const pen = index < lines.length ? theme.strong : theme.quiet;
    writeText(grid, notes.x, notes.y + index, fitText(line, notes.cols), pen);
  });
  return Math.max(0, lines.length + said.length - notes.rows);
}

/** Remarks as long as there is room for the whole of one. */
function wholeRemarks(remarks: readonly string[], width: number, rows: number): readonly string[] {
  const lines: string[] = [];
  for (const remark of remarks) {
    const wrapped = wrapText(remark, width);
    if (lines.length + wrapped.length <= rows) lines.push(...wrapped);
  }
  return lines;
}
