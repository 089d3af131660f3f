import type { Rig } from './rig.ts';
import { liveSpanCounts } from './share-of-span.ts';

/** One count of the brake's sensor as a level, the finest step a trace can show; 0 for a rig without a brake. */
export function brakeStepLevel(rig: Pick<Rig, 'axes'>): number {
  const brake = rig.axes.find((axis) => axis.role === 'brake');
  return brake === undefined ? 0 : 1 / liveSpanCounts(brake.calibration);
}
