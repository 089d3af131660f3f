import type { Problem } from '../../problem.ts';
import type { RigDevice } from '../rig-device.ts';

/** A device that is plugged in, as far as it can be known without opening it. */
export interface FoundDevice extends RigDevice {
  /** Maker's name, safe to print; empty where the device does not say. */
  readonly maker: string;
  /**
   * `rig`: says it is pedals, a wheel or a game controller, or has an axis that could be a pedal.
   * `desk`: mouse, keyboard, touchpad. `other`: anything else, or a device that does not say.
   */
  readonly kind: 'rig' | 'desk' | 'other';
  /** Why it cannot be opened by this user, with the way out; null where nothing is known to be in the way. */
  readonly problem: Problem | null;
}
