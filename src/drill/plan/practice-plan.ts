/** How the zones of a block follow each other. */
export const ORDERS = ['blocked', 'serial', 'shuffled'] as const;
export type RepOrder = (typeof ORDERS)[number];

/** What a rep is for; the history keeps it with each rep. */
export type RepPhase = 'first-of-day' | 'warm-up' | 'block' | 'carry-over';

/** A corner that the live car drives. Names are ids or paths of files. */
export interface LiveCarZone {
  readonly corner: string;
  readonly car: string;
  /** Null for the sheet's first. */
  readonly variant: string | null;
}

/** What is drilled: a target over time, or a corner with the live car. */
export type PlanZone =
  | {
      readonly kind: 'target';
      readonly target: string;
      /** What follows once the driver is promoted; null where nothing does. */
      readonly live: LiveCarZone | null;
    }
  | ({ readonly kind: 'live car' } & LiveCarZone);

/** From where to where a factor is drawn. */
export interface FactorRange {
  readonly from: number;
  readonly to: number;
}

/** How far targets are varied from rep to rep, as factors; both ends are 1 for what is left as it is. */
export interface Vary {
  readonly level: FactorRange;
  readonly releaseLength: FactorRange;
}

/** A block as the coach plans it. */
export interface PlannedBlock {
  readonly order: RepOrder;
  /** Of all zones together. */
  readonly reps: number;
  readonly vary: Vary | null;
}

/** How often the own trace is drawn, up to a rep. */
interface FeedbackStage {
  /** The first rep, counted from 0, that belongs to the next stage; infinite for the last. */
  readonly untilRep: number;
  /** 0..1. */
  readonly shownShare: number;
}

export type FeedbackRule =
  /** The drill's own schedule. */
  | { readonly kind: 'scheduled' }
  | {
      readonly kind: 'thinning';
      /** Which reps of the zone are counted: those of this practice, or all there ever were. */
      readonly counted: 'practice' | 'life';
      readonly stages: readonly FeedbackStage[];
    };

/** When the leg has had enough. */
export interface HardReps {
  /** Level 0..1 from which on a rep counts as hard, whatever the target asked for. */
  readonly fromLevel: number;
  /** The practice ends with the block in which so many are reached. */
  readonly most: number;
  /** Factor of the critical difference from which on the driver is told to stop. */
  readonly fatigueLimit: number;
}

/** The check on something that was not practised this week. */
interface CarryOver {
  readonly reps: number;
  /** Tried in turn: the one that was left alone for longest. */
  readonly zones: readonly PlanZone[];
}

/** When a target is followed well enough for the next thing to be tried. */
export interface Promotion {
  /** So many of the last hidden reps... */
  readonly inCorridorReps: number;
  /** ...out of so many... */
  readonly ofHiddenReps: number;
  /** ...lay in the corridor over this share of the release. */
  readonly corridorShare: number;
}

/** A coach's plan for a practice. */
export interface PracticePlan {
  /** File name without its ending. */
  readonly id: string;
  readonly name: string;
  readonly advice: string | null;
  /** At least one. */
  readonly zones: readonly PlanZone[];
  readonly firstOfDayReps: number;
  readonly warmUpReps: number;
  readonly blocks: readonly PlannedBlock[];
  readonly feedback: FeedbackRule;
  /** A shown rep more in a row is hidden instead. */
  readonly mostShownInARow: number;
  readonly hardReps: HardReps;
  /** Kept with the reps of the blocks, which are then compared with each other only. Null for the usual. */
  readonly condition: string | null;
  readonly carryOver: CarryOver | null;
  readonly promotion: Promotion | null;
  /** Null for the drill's own. */
  readonly restS: number | null;
  readonly countdownS: number | null;
  /** Road between two braking zones of a stint, s: brakes cool for so long. Null lets each rep start afresh. */
  readonly stintGapS: number | null;
  /** Share of live-car reps with a late call, 0..1. */
  readonly lateCallShare: number;
}
