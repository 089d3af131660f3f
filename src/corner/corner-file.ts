import type { CarOverridesFile } from '../car/car-overrides.ts';
import type { CallWord } from './call-word.ts';
import type { LineKind } from './line.ts';

/** A corner sheet as the schema lets it through; keys and units as people write them. */
export interface CornerFile extends ApproachFile {
  readonly name: string;
  readonly corner_type: string;
  readonly advice?: string;
  readonly direction: 'left' | 'right';
  readonly line: LineFile;
  readonly approach_speed_kmh: number;
  readonly approach_length_m: number;
  readonly gears: GearsFile;
  readonly slope?: readonly { readonly before_apex_m: number; readonly slope_percent: number }[];
  readonly bank?: readonly { readonly before_apex_m: number; readonly bank_percent: number }[];
  readonly bumps?: readonly BumpFile[];
  readonly coach_mark?: { readonly before_apex_m: number; readonly word: string };
  readonly variants: readonly VariantFile[];
}

/** What the sheet says for all variants and each variant may say anew. */
interface ApproachFile {
  readonly approach_speed_kmh?: number;
  readonly approach_length_m?: number;
  readonly grip_share?: number;
  readonly gears?: GearsFile;
}

export interface LineFile {
  /** A constant radius is known to the schema so that its refusal can say why. */
  readonly entry?: LineKind | 'constant-radius';
  readonly turn_deg: number;
  readonly radius_m: number;
  readonly entry_length_m?: number;
  readonly exit_length_m?: number;
  readonly first_arc_deg?: number;
  readonly between_length_m?: number;
  readonly between_radius_m?: number;
  readonly second_radius_m?: number;
  readonly second_turn_deg?: number;
}

export interface GearsFile {
  readonly approach: number;
  readonly slowest: number;
  readonly shifts_before_apex_m?: readonly number[];
}

interface BumpFile {
  readonly before_apex_m: number;
  readonly length_m: number;
  readonly load_loss_share: number;
}

export interface VariantFile extends ApproachFile, CarOverridesFile {
  readonly variant: string;
  readonly note?: string;
  readonly call?: CallWord;
  readonly line_factor?: number;
}
