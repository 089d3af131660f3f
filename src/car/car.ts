import type { Aero } from './aero.ts';
import type { AntiLock } from './anti-lock.ts';
import type { Brakes } from './brakes.ts';
import type { Chassis } from './chassis.ts';
import type { Disc } from './disc-heat.ts';
import type { ElectricBraking } from './electric-braking.ts';
import type { Engine, Gearbox } from './gearbox.ts';
import type { Tyre } from './tyre.ts';
import type { Wheel } from './wheel.ts';

/** A value for each axle that is not a force. */
export interface PerAxle<T> {
  readonly front: T;
  readonly rear: T;
}

/** Pad friction against disc temperature, rising temperatures, joined by a monotone cubic. */
export type PadCurve = readonly { readonly discC: number; readonly friction: number }[];

/** What the driver can do with the pedal. */
interface DriverLimits {
  /** From nothing to the first application, s. */
  readonly riseS: number;
  readonly peakPedalForceN: number;
  /** Fastest release that still is a release and not a lift-off, N/s. */
  readonly releaseNps: number;
}

/** How the car's pedal feels, as far as it is known. */
export interface PedalFeel {
  readonly travelM: number | null;
  /** Travel before the pads touch. */
  readonly deadStrokeM: number | null;
  /** After the dead stroke, N/m. */
  readonly stiffnessNpm: number | null;
}

/** A car in one state, in SI: everything a target is derived from. */
export interface Car {
  /** File name without its ending. */
  readonly id: string;
  readonly name: string;
  readonly chassis: Chassis;
  readonly trackM: number;
  readonly aero: Aero;
  readonly tyres: PerAxle<Tyre>;
  readonly wheels: PerAxle<Wheel>;
  readonly rollingResistance: number;
  /** Rotating inertia as a share of the mass, 0.03 to 0.10. */
  readonly rotatingShare: number;
  /** Pad friction in here is the one at `discStartC` and `padStartC`. */
  readonly brakes: Brakes;
  readonly discs: PerAxle<Disc>;
  readonly padCurves: PerAxle<PadCurve>;
  readonly discStartC: PerAxle<number>;
  readonly padStartC: PerAxle<number>;
  /** The frictions in `tyres` hold at this temperature. */
  readonly tyreStartC: number;
  readonly airC: number;
  /** Null without anti-lock. */
  readonly antiLock: AntiLock | null;
  /** Null without a motor, and while the battery is full. */
  readonly electric: ElectricBraking | null;
  readonly gearbox: Gearbox;
  readonly engine: Engine;
  /** Share of the engine's force on the front axle: 0 rear-driven, 1 front-driven. */
  readonly frontDriveShare: number;
  readonly driver: DriverLimits;
  readonly pedal: PedalFeel;
  /** Natural frequency of the pitch motion, Hz: how soon the front axle gets the load. */
  readonly pitchHz: number;
  /** Steering wheel angle over road wheel angle. */
  readonly steeringRatio: number;
  /** Extra road-wheel angle per lateral acceleration, rad s^2/m; positive understeers. */
  readonly understeerRadpMps2: number;
  /** Pedal force that full scale of the rig stands for, N. */
  readonly fullScalePedalForceN: number;
}
