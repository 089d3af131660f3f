import type { Target } from '../target/target.ts';
import type { ButtonEvent } from '../trace/rig-batch.ts';

/** The gear in which the rep begins: one above the first downshift's; null where the target has no gears. */
export function initialGear({ gears, marks }: Target): number | null {
  const first = gears[0];
  if (first === undefined) return null;
  return first.at <= marks.rise ? first.gear : first.gear + 1;
}

/** The gear after what the paddles did; first gear is the lowest. */
export function shiftedGear(gear: number | null, buttons: readonly ButtonEvent[]): number | null {
  return buttons.reduce((now, { action, pressed }) => {
    if (now === null || !pressed) return now;
    if (action === 'upshift') return now + 1;
    return action === 'downshift' ? Math.max(1, now - 1) : now;
  }, gear);
}
