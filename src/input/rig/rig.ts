import type { ButtonAction } from '../../trace/rig-batch.ts';
import type { FieldLocation } from '../hid/report-field.ts';
import type { DeviceIdentity } from '../rig-device.ts';

export type AxisRole = 'brake' | 'throttle' | 'clutch' | 'steering';

/** What the brake's sensor measures; force numbers apply to force sensors only. */
export type SensorKind = 'force' | 'pressure' | 'travel' | 'unknown';

/** Newtons over counts, fitted to known loads. */
export interface LoadFit {
  readonly newtonsPerCount: number;
  /** Counts at no load. */
  readonly zeroCounts: number;
  readonly loads: readonly { readonly newtons: number; readonly counts: number }[];
  /** Standard deviation of the residuals in newtons; null with two loads, where the line is unchecked. */
  readonly residualN: number | null;
}

/**
 * How counts become a level. `full` below `rest` is an axis that counts down. A combined axis is two assignments of
 * one field that rest in the middle and go opposite ways. For steering, `rest` is straight ahead and `full` is the
 * left stop.
 */
export interface AxisCalibration {
  readonly restCounts: number;
  readonly fullCounts: number;
  /** Shares of the span that read as 0 and as 1; 0 by default. */
  readonly deadStart: number;
  readonly deadEnd: number;
  readonly sensor: SensorKind;
  readonly load: LoadFit | null;
}

export interface AxisAssignment {
  readonly role: AxisRole;
  readonly device: DeviceIdentity;
  readonly field: FieldLocation;
  readonly calibration: AxisCalibration;
}

export interface ButtonAssignment {
  readonly device: DeviceIdentity;
  readonly field: FieldLocation;
  /** What the field reads while the button is down: 1, or 0 for a button that reports the other way round. */
  readonly pressedCounts: number;
  /** Name shown to the driver. */
  readonly control: string;
  readonly action: ButtonAction | null;
}

/** The pedals and wheel in front of the driver. */
export interface Rig {
  readonly axes: readonly AxisAssignment[];
  readonly buttons: readonly ButtonAssignment[];
  /** Degrees from left stop to right stop; null without a wheel. */
  readonly wheelLockDeg: number | null;
  readonly foot: 'left' | 'right';
  readonly footwear: string;
  /** How the brake pedal feels, as measured; absent where nobody did. */
  readonly brakeFeel?: BrakeFeel;
}

/** A pedal measured by hand, in SI; null where not known. */
interface BrakeFeel {
  /** At full scale. */
  readonly travelM: number | null;
  /** Before it resists. */
  readonly deadStrokeM: number | null;
  /** After that. */
  readonly stiffnessNpm: number | null;
}
