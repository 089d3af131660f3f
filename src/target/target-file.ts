import type { RiseShape } from './rise-shape.ts';

/** A target file as the schema lets it through; keys and units as people write them. */
export type TargetFile = TimeTargetFile | DistanceTargetFile;

interface TargetFileWords {
  readonly name: string;
  readonly corner_type: string;
  readonly advice?: string;
  readonly peak_level: number;
  readonly full_scale?: FullScaleFile;
  readonly learned_from?: LearnedFromFile;
}

export interface CorridorFile<Position> {
  readonly floor_level?: number;
  readonly share?: number;
  readonly knots?: readonly (Position & { readonly half_width_level: number })[];
}

/** What a learned target was made of. It leaves the score as it is. */
export interface LearnedFromFile {
  readonly source: 'trace' | 'reps';
  readonly name: string;
  readonly learned_on: string;
  readonly zones?: readonly number[];
  readonly reps?: readonly number[];
  readonly shown_reps?: number;
  readonly hidden_reps?: number;
  readonly first_of_day_reps?: number;
  readonly left_out?: readonly { readonly number: number; readonly reason: string }[];
  readonly landmarks: readonly {
    readonly landmark: string;
    readonly time_s: number;
    readonly spread_s: number;
  }[];
  readonly smoothing_criterion: string;
  readonly smoothing_half_height_hz: number;
  readonly smoothing_miss_level: number;
  readonly spread_level: number;
  readonly over_time_spread_level: number;
  readonly corridor: string;
}

export interface FullScaleFile {
  readonly pedal_force_n?: number;
  readonly pedal_force_kgf?: number;
  readonly pedal_force_lbf?: number;
  readonly pressure_bar?: number;
  readonly pressure_psi?: number;
}

export interface TimeTargetFile extends TargetFileWords {
  readonly domain: 'time';
  readonly rise: { readonly duration_s: number } & RiseShapeFile;
  readonly hold_s?: number;
  readonly bleed?: { readonly duration_s: number; readonly to_level: number };
  readonly release: { readonly duration_s: number } & ReleaseShapeFile<TimePosition>;
  readonly turn_in_s?: number;
  readonly apex_s?: number;
  readonly steering?: SteeringFile<TimePosition>;
  readonly corridor?: CorridorFile<TimePosition>;
  readonly gears?: readonly (TimePosition & { readonly gear: number })[];
}

export interface DistanceTargetFile extends TargetFileWords {
  readonly domain: 'distance';
  readonly brake_point_m: number;
  readonly entry_speed_kmh?: number;
  readonly entry_speed_mph?: number;
  readonly entry_speed_mps?: number;
  readonly slowest_speed_kmh?: number;
  readonly slowest_speed_mph?: number;
  readonly slowest_speed_mps?: number;
  readonly rise: { readonly length_m: number } & RiseShapeFile;
  readonly hold_m?: number;
  readonly bleed?: { readonly length_m: number; readonly to_level: number };
  readonly release: { readonly brake_off_m?: number } & ReleaseShapeFile<DistancePosition>;
  readonly turn_in_m?: number;
  readonly apex_m?: number;
  readonly steering?: SteeringFile<DistancePosition>;
  readonly corridor?: CorridorFile<DistancePosition>;
  readonly gears?: readonly (DistancePosition & { readonly gear: number })[];
}

interface TimePosition {
  readonly time_s: number;
}

interface DistancePosition {
  readonly distance_m: number;
}

export interface RiseShapeFile {
  readonly shape?: RiseShape;
  readonly squeeze?: {
    readonly from_share: number;
    readonly after_share: number;
    readonly e_folds: number;
  };
}

/** On either axis, as the file's domain says. */
export type FilePosition = TimePosition | DistancePosition;

export type ReleaseShapeFile<Position> =
  | { readonly shape: 'linear' | 'raised-cosine' }
  | { readonly shape: 'power-law'; readonly exponent: number }
  | { readonly shape: 'exponential'; readonly e_folds: number }
  | { readonly shape: 'two-stage'; readonly corner: Position & { readonly level: number } }
  | {
      readonly shape: 'knots';
      readonly knots: readonly (Position & { readonly level: number })[];
    };

export type SteeringFile<Position> =
  | { readonly shape: RiseShape; readonly angle_deg: number }
  | {
      readonly shape: 'knots';
      readonly knots: readonly (Position & { readonly angle_deg: number })[];
    };
