import type { DrillModel, Stage } from './drill-model.ts';
import { FOOT_OFF_LEVEL } from './stages.ts';

/** How long before the cue the driver gathers for it. */
const GATHERING_S = 0.5;

/** True while the foot is off the brake and nothing is about to happen that a late picture would spoil. */
export function isCalm({ stage, levels, atS }: DrillModel): boolean {
  return (levels.brake ?? 0) <= FOOT_OFF_LEVEL && atS < calmUntilS(stage);
}

function calmUntilS(stage: Stage): number {
  switch (stage.kind) {
    case 'arming':
    case 'paused':
    case 'device-lost':
    case 'summary':
      return Number.POSITIVE_INFINITY;
    case 'countdown':
    case 'rolling':
      return stage.cueS - GATHERING_S;
    case 'ready':
    case 'braking':
    case 'driving':
    case 'after':
      return Number.NEGATIVE_INFINITY;
  }
}
