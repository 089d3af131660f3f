import type { Aero } from './aero.ts';
import type { Brakes } from './brakes.ts';
import type { Chassis } from './chassis.ts';
import type { Disc } from './disc-heat.ts';
import type { Engine, Gearbox } from './gearbox.ts';
import type { Tyre } from './tyre.ts';

/** A value for each axle that is not a force. */
export interface PerAxle<T> {
  readonly front: T;
  readonly rear: T;
}

/** Pad friction against disc temperature, rising temperatures, joined by a monotone cubic. */
export type PadCurve = readonly { readonly discC: number; readonly friction: number }[];

/** What the driver can do with the pedal. */
export interface DriverLimits {
  /** From nothing to the first application, s. */
  readonly riseS: number;
  readonly peakPedalForceN: number;
  /** Fastest release that still is a release and not a lift-off, N/s. */
  readonly releaseNps: number;
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
  readonly rollingResistance: number;
  /** Pad friction in here is the one at `discStartC`. */
  readonly brakes: Brakes;
  readonly discs: PerAxle<Disc>;
  readonly padCurves: PerAxle<PadCurve>;
  readonly discStartC: PerAxle<number>;
  readonly airC: number;
  readonly gearbox: Gearbox;
  readonly engine: Engine;
  /** Share of the engine's force on the front axle: 0 rear-driven, 1 front-driven. */
  readonly frontDriveShare: number;
  readonly driver: DriverLimits;
  /** Natural frequency of the pitch motion, Hz: how soon the front axle gets the load. */
  readonly pitchHz: number;
  /** Steering wheel angle over road wheel angle. */
  readonly steeringRatio: number;
  /** Extra road-wheel angle per lateral acceleration, rad s^2/m; positive understeers. */
  readonly understeerRadpMps2: number;
  /** Pedal force that full scale of the rig stands for, N. */
  readonly fullScalePedalForceN: number;
}
