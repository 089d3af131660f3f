import type { Car } from '../car/car.ts';
import type { CallWord } from '../corner/call-word.ts';
import type { CoachMark, Corner } from '../corner/corner.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import type { Target } from '../target/target.ts';

/** From where the car begins to roll to the target's brake point at the approach speed, s. */
export const LEAD_IN_S = 3;

/** Distance boards as circuits set them up, m before turn-in. */
export const BOARDS_M: readonly number[] = [200, 150, 100, 50];

/** What the rig lets the driver decide; the rest is done for them and said so. */
export interface LiveControls {
  /** False: the wheel follows the rail. */
  readonly steering: boolean;
  readonly throttle: boolean;
  readonly clutch: boolean;
  /** False: the downshifts come at the target's places. */
  readonly paddles: boolean;
}

export type { CallWord };

/** Something that changes the zone while the car is already on its way. */
export interface LateCall {
  readonly word: CallWord;
  /** Where the driver is told, m from turn-in. */
  readonly atM: number;
  /** What the driver prepared for, and sees until then. */
  readonly before: DerivedTarget;
}

/** A braking zone to be driven once: the car as it is now, the corner with its variant, and the target that follows. */
export interface LiveZone {
  /** With the temperatures, fuel and tyres it has at the start of this rep. */
  readonly car: Car;
  readonly corner: Corner;
  readonly derived: DerivedTarget;
  /** The derived target over time: its name, identity and version are those of the rep. */
  readonly target: Target;
  /** Where the car begins to roll, m from turn-in: `LEAD_IN_S` before the brake point the driver prepared for. */
  readonly rollFromM: number;
  /** What the coach looks for beside the road, with its own word; null where the sheet has none. */
  readonly coachMark: CoachMark | null;
  readonly controls: LiveControls;
  readonly call: LateCall | null;
}
