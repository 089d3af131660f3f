import type { DerivedTarget } from './derive-target.ts';
import { type GripLimit, gripLimit } from './grip-limit.ts';

/** The limits between which a zone is driven: at the speed of its brake point and at that of its slowest point. */
export interface GgLimits {
  readonly fast: GripLimit;
  readonly slow: GripLimit;
}

export function ggLimits({ car, corner, zone, keys }: DerivedTarget): GgLimits {
  return {
    fast: gripLimit(car, corner, keys.brakePoint, zone.model),
    slow: gripLimit(car, corner, keys.slowest, zone.model),
  };
}
