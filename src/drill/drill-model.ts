import type { HeatState } from '../car/heat-state.ts';
import type { CallWord } from '../corner/call-word.ts';
import type { LiveZone } from '../live/live-zone.ts';
import type { Deviation } from '../score/deviation.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import type { Target } from '../target/target.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { DisplaySettings } from './display/display-settings.ts';
import type { DisplayMenu } from './display/on-display.ts';
import type { RepTag } from './drill-message.ts';
import type { DrillSetup } from './drill-setup.ts';
import type { BlockSummary, DeviceHealth, Feedback, TargetSummary } from './drill-view.ts';
import type { LiveRep } from './live/live-rep.ts';
import type { RepDrive } from './live/rep-drive.ts';
import type { NoteUnderWay } from './note-typing.ts';
import type { OnsetSearch } from './onset-search.ts';
import type { PaceUnderWay } from './pace-under-way.ts';
import type { DrawnRep } from './pictures/drawn-rep.ts';
import type { PlanProgress } from './plan/plan-progress.ts';
import type { AfterTimes } from './rating-wait.ts';
import type { Levels, Recording } from './recording.ts';
import type { SampleLog } from './sample-log.ts';
import type { RatingUnderWay, SelfRating } from './self-rating.ts';

/** The traces as the driver sees them: zero time is the start of the target's rise. */
export interface OwnTraces {
  readonly brake: SampleLog;
  readonly steering: SampleLog;
}

/** Where the rep is. Times are of the source's clock. */
export type Stage =
  | { readonly kind: 'arming'; readonly offSinceS: number | null }
  /** The foot has to stay off. */
  | { readonly kind: 'countdown'; readonly cueS: number; readonly pressedSinceS: number | null }
  /** From shortly before the cue: an onset now is a rep. */
  | { readonly kind: 'ready'; readonly cueS: number; readonly search: OnsetSearch }
  | {
      readonly kind: 'braking';
      readonly cueS: number;
      /** What the target's zero is on the source's clock. */
      readonly originS: number;
      readonly offLevel: number;
      readonly offSinceS: number | null;
      readonly liveError: Deviation;
      readonly own: OwnTraces;
      /** Null where the now line follows the clock. */
      readonly pace: PaceUnderWay | null;
    }
  /** The live car on the approach: an onset now is a rep. */
  | {
      readonly kind: 'rolling';
      readonly cueS: number;
      readonly search: OnsetSearch;
      readonly drive: RepDrive;
    }
  /** The live car from the onset of braking on. */
  | {
      readonly kind: 'driving';
      readonly cueS: number;
      readonly offLevel: number;
      readonly offSinceS: number | null;
      readonly drive: RepDrive;
    }
  /** Result held back, result alone, rest. */
  | (AfterTimes & {
      readonly kind: 'after';
      readonly rep: RepTag;
      readonly own: OwnTraces | null;
      /** How the live car came through; null in a drill over time and for a void rep. */
      readonly drive: RepDrive | null;
    })
  | { readonly kind: 'paused' }
  | { readonly kind: 'device-lost' }
  | {
      readonly kind: 'summary';
      readonly summary: BlockSummary;
      /** A planned block may have reps of several targets; the first is that of the summary. */
      readonly byTarget: readonly [TargetSummary, ...TargetSummary[]];
    };

/** A rep that has ended and waits for its score. */
export interface UnscoredRep {
  readonly tag: RepTag;
  readonly record: RepRecord;
  /** What it was driven against. */
  readonly target: Target;
  readonly paced: boolean;
  readonly zone: LiveZone | null;
  /** How the live car came through; null in a drill over time. */
  readonly drive: RepDrive | null;
  readonly rating: SelfRating | null;
  /** The target on whose grid its curve can lie. */
  readonly gridTarget: Target;
  readonly revealAtS: number;
}

/** A rep that is written down. */
export interface DoneRep {
  readonly tag: RepTag;
  readonly outcome: RepOutcome | null;
  readonly voided: 'aborted' | 'device lost' | null;
  /** The late call it was driven with; null for none, and for a rep that does not count. */
  readonly call: CallWord | null;
  /** What to tell the driver, in words; empty where there is nothing to say. */
  readonly sentence: string;
  /** The same in one or two short words; empty where there are none. */
  readonly glance: readonly string[];
  /** That the leg has proved tired with this rep; null where there is nothing to warn of. */
  readonly warning: string | null;
  readonly revealAtS: number;
  readonly rating: SelfRating | null;
  /** Level on the grid of the target's block; null for a rep that was not scored. */
  readonly curve: Float64Array | null;
  readonly gridTarget: Target;
  /** What the pictures of the rest show of it; null for a rep that was not scored. */
  readonly drawn: DrawnRep | null;
}

/** A run of reps with one plan. */
export interface Block {
  /** In the practice, from 1. */
  readonly number: number;
  readonly phase: RepTag['phase'];
  readonly reps: number;
  /** Place of the rep under way, from 1; `reps + 1` when the block is over. */
  readonly place: number;
  /** Newest first. */
  readonly done: readonly DoneRep[];
}

/** The clutch as a pause switch. */
export interface ClutchHold {
  readonly sinceS: number | null;
  /** This hold has done its work; the foot has to come off first. */
  readonly spent: boolean;
}

/** The drill between two messages. Never changed; `update` gives a new one. */
export interface DrillModel {
  readonly setup: DrillSetup;
  /** The zone of the rep under way, or of the last one; null in a drill over time. */
  readonly live: LiveRep | null;
  /** The driver's wheel says where on the target the rep is, and not the clock. */
  readonly paced: boolean;
  /** Where the target's own onset lies by the rule that finds the rep's, seconds after the start of its rise. */
  readonly targetOnsetS: number;
  /** How hot the brakes are in a stint; null stands for the car's start temperatures. */
  readonly heat: HeatState | null;
  /** Everything up to here has been seen. */
  readonly atS: number;
  readonly stage: Stage;
  /** Last value of each axis. */
  readonly levels: Levels;
  readonly gear: number | null;
  readonly recording: Recording | null;
  readonly block: Block;
  readonly unscored: readonly UnscoredRep[];
  /** Attempts in this practice. */
  readonly attempts: number;
  /** Outcomes of the driver's newest reps of this target, newest last: as far back as advice looks. */
  readonly recent: readonly RepOutcome[];
  /** Reps of this target in the driver's life; with a plan the zones have counts of their own. */
  readonly repsInLife: number;
  /** Null in a drill without a plan. */
  readonly plan: PlanProgress | null;
  readonly feedback: Feedback;
  /** What the driver chose against the schedule. */
  readonly chosenFeedback: Exclude<Feedback, 'first-of-day'> | null;
  /** The driver wants to rate each rep before its result. */
  readonly asksRating: boolean;
  /** Of the rep just finished; null where none was asked for. */
  readonly rating: RatingUnderWay | null;
  /** Being typed; null for none. Nothing is driven meanwhile. */
  readonly note: NoteUnderWay | null;
  readonly display: DisplaySettings;
  /** The list of them; null while it is not open. */
  readonly menu: DisplayMenu | null;
  readonly clutchHold: ClutchHold;
  readonly lostDevices: readonly string[];
  readonly message: string | null;
  readonly health: readonly DeviceHealth[];
  readonly dropped: number;
}
