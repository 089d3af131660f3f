import { targetCoupling } from '../drill/diagnosis/steering-coupling.ts';
import { targetPlan } from '../live/target-plan.ts';
import { asciiFallback } from '../screens/ascii-fallback.ts';
import { type Area, type CellGrid, createGrid } from '../screens/cell-grid.ts';
import { toText } from '../screens/grid-text.ts';
import { drawCoupling } from '../screens/grip/coupling-picture.ts';
import { drawGg } from '../screens/grip/gg-picture.ts';
import { drawPlan } from '../screens/live/plan-picture.ts';
import type { Look } from '../screens/look.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import { ggLimits } from '../target/derive/gg-limits.ts';
import { targetGripTrace } from '../target/derive/grip-trace.ts';
import { overTime } from '../target/over-time.ts';
import type { Target } from '../target/target.ts';
import { speedText } from '../unit-text.ts';
import type { CommandContext } from './command.ts';
import { targetDrawing } from './target-drawing.ts';

/** The ways in which a derived target can be drawn; the first is the usual one. */
export const TARGET_PICTURES = ['time', 'gg', 'coupling', 'plan'] as const;

export type TargetPicture = (typeof TARGET_PICTURES)[number];

const AREA: Area = { x: 0, y: 0, cols: 79, rows: 20 };

/** A derived target in 80 columns, drawn in one of the ways. `target` is what its file says. */
export function targetPicture(
  picture: TargetPicture,
  derived: DerivedTarget,
  target: Target,
  look: Look,
  units: CommandContext['units'],
): string {
  switch (picture) {
    case 'time':
      return targetDrawing(target, look);
    case 'gg': {
      const subject = {
        limits: ggLimits(derived),
        target: targetGripTrace(derived),
        own: [],
        speedText: (speedMps: number) => speedText(speedMps, units),
      };
      const inUnits = { ...look, units };
      return drawn(look, (grid) => drawGg(grid, AREA, subject, inUnits));
    }
    case 'coupling': {
      const subject = { target: targetCoupling(overTime(target)), own: [] };
      return drawn(look, (grid) => drawCoupling(grid, AREA, subject, look));
    }
    case 'plan':
      return drawn(look, (grid) => drawPlan(grid, AREA, targetPlan(derived), look));
  }
}

function drawn(look: Look, draw: (grid: CellGrid) => void): string {
  const grid = createGrid(AREA);
  draw(grid);
  if (!look.unicode) asciiFallback(grid);
  return toText(grid).trimEnd();
}
