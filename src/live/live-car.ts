import type { AntiLockState } from '../car/anti-lock.ts';
import type { PerAxle } from '../car/car.ts';
import type { HeldInputs } from './input-feed.ts';
import type { LiveEvent } from './live-event.ts';
import type { LiveInputs } from './live-inputs.ts';

/** The model's step. Every step lies on the grid on which a record is kept, so that a record drives the same car again. */
export const STEP_S = 0.001;

/** One axle of the car on its way. */
export interface LiveAxle {
  /** Grip asked for over grip there is: 1 is the limit, 10 the most that is said. As at the start of the last step. */
  readonly use: number;
  /** How much slower the wheels turn than they roll: 0 rolling, 1 locked. */
  readonly slip: number;
  readonly antiLock: AntiLockState;
}

/** A shift under way. */
export interface LiveShift {
  readonly fromGear: number;
  readonly toGear: number;
  readonly atM: number;
  readonly atS: number;
  readonly untilStep: number;
  /** Braking force while the engine is dragged up to speed, N; 0 with a blip. */
  readonly dragN: number;
  /** Engine speed in the new gear. */
  readonly rpm: number;
  readonly overRev: boolean;
  /** Largest use of the rear axle's grip so far. */
  readonly rearUse: number;
  readonly byDriver: boolean;
}

/** The car between two steps. Never changed; driving on gives a new one. */
export interface LiveCar extends PerAxle<LiveAxle> {
  /** Steps since it began to roll. */
  readonly step: number;
  /** Along the path from turn-in, m, negative before it. */
  readonly sM: number;
  readonly speedMps: number;
  /** ISO 8855: negative when slowing. The mean of the last step: its integral is the change of speed. */
  readonly accelXMps2: number;
  /** What the wheel asks for, or the rail without a wheel; positive to the left. As at the start of the last step. */
  readonly accelYMps2: number;
  /** Where the brake first took hold, m from turn-in; null on the approach, which is driven at constant speed. */
  readonly brakedFromM: number | null;
  /** Load that pitch has brought to the front axle so far, N. */
  readonly transferN: number;
  readonly gear: number;
  readonly rpm: number;
  /** A shift under way; its event comes when it is through. */
  readonly shift: LiveShift | null;
  /** Work of the brakes of each axle so far, J: what heats the discs. */
  readonly workJ: PerAxle<number>;
  readonly events: readonly LiveEvent[];
  /** Brake level with which it began to roll: only more than this takes hold. */
  readonly restingLevel: number;
  readonly held: HeldInputs;
  /** Samples that are not due yet. */
  readonly waiting: LiveInputs;
}
