import type { PerAxle } from '../car/car.ts';
import type { CallWord, LiveControls, LiveZone } from './live-zone.ts';

/**
 * What a braking zone began with beyond what its car, corner and variant say. With their files it is enough to build
 * the zone of a stored rep again.
 */
export interface LiveStart {
  readonly discC: PerAxle<number>;
  readonly padC: PerAxle<number>;
  /** The late call that was given; null for none. */
  readonly call: CallWord | null;
  readonly controls: LiveControls;
}

export function liveStart({ car, call, controls }: LiveZone): LiveStart {
  return { discC: car.discStartC, padC: car.padStartC, call: call?.word ?? null, controls };
}
