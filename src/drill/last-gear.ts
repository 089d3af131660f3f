import type { FinishedRep } from './drill-message.ts';
import { initialGear, shiftedGear } from './gear.ts';

/** The gear a rep ended in; null where neither target nor live car tells. */
export function lastGear({
  zone,
  target,
  record,
  outcome,
}: Pick<FinishedRep, 'zone' | 'target' | 'record' | 'outcome'>): number | null {
  if (zone === null) return shiftedGear(initialGear(target), record.buttons);
  const live = outcome?.kind === 'scored' ? outcome.live : null;
  return live === null ? null : (live.shifts.at(-1)?.toGear ?? zone.corner.gears.approach);
}
