import type { RepOrder } from './practice-plan.ts';

/** A plan file as the schema lets it through; keys and units as people write them. */
export interface PlanFile {
  readonly name: string;
  readonly advice?: string;
  readonly zones: readonly ZoneFile[];
  readonly first_of_day_reps?: number;
  readonly warm_up_reps?: number;
  readonly blocks: readonly BlockFile[];
  readonly feedback?: FeedbackFile;
  readonly hard_reps?: {
    readonly from_level?: number;
    readonly most?: number;
    readonly fatigue_limit?: number;
  };
  readonly condition?: string;
  readonly carry_over?: { readonly reps?: number; readonly zones: readonly ZoneFile[] };
  readonly promote?: {
    readonly in_corridor_reps?: number;
    readonly of_hidden_reps?: number;
    readonly corridor_share?: number;
  };
  readonly rest_s?: number;
  readonly countdown_s?: number;
  readonly stint_gap_s?: number;
  readonly late_call_share?: number;
}

export interface LiveZoneFile {
  readonly corner: string;
  readonly car: string;
  readonly variant?: string;
}

/** Either `target`, or `corner` and `car`; the rules see to it. */
export interface ZoneFile extends Partial<LiveZoneFile> {
  readonly target?: string;
  readonly live?: LiveZoneFile;
}

export interface BlockFile {
  readonly reps: number;
  readonly order?: RepOrder;
  readonly vary?: {
    readonly level_factor?: readonly number[];
    readonly release_length_factor?: readonly number[];
  };
}

export type FeedbackFile = { readonly most_shown_in_a_row?: number } & (
  | { readonly rule: 'scheduled' }
  | {
      readonly rule: 'thinning';
      readonly counted?: 'practice' | 'life';
      readonly stages: readonly StageFile[];
    }
);

export interface StageFile {
  readonly until_rep?: number;
  readonly shown_share: number;
}
