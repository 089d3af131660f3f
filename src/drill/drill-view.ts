import type { CallWord } from '../corner/call-word.ts';
import type { LiveView } from '../live/live-view.ts';
import type { Cause, RepOutcome } from '../score/rep-score.ts';
import type { SharedTrouble } from '../score/trouble/shared-troubles.ts';
import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';
import type { BlockDiagnosis } from './diagnosis/block-diagnosis.ts';
import type { DisplaySettings } from './display/display-settings.ts';
import type { LapView } from './event/lap-view.ts';
import type { LearnedButton } from './learned-buttons.ts';
import type { NoteUnderWay } from './note-typing.ts';
import type { RestPictures } from './pictures/rest-pictures.ts';
import type { RatingUnderWay } from './self-rating.ts';

/** What the driver may see of a rep: the own trace as it is drawn, only afterwards, or not even the target. */
export type Feedback = 'shown' | 'hidden' | 'first-of-day';

export type DrillPhase =
  /** Waiting for the foot to come off the brake. */
  | 'arming'
  /** The predictable 3-2-1 before the cue. */
  | 'countdown'
  /** The cue is given; waiting for the onset of braking. */
  | 'cue'
  | 'braking'
  /** Finished; score held back for 2 to 3 s so that the driver can feel first, then shown. */
  | 'result'
  | 'rest'
  | 'paused'
  | 'device-lost'
  /** Block over. */
  | 'summary';

/** One line of the list of last reps. */
export interface RepLine {
  readonly number: number;
  /** Null where all reps of the block have the same target. */
  readonly targetName: string | null;
  readonly feedback: Feedback;
  /** Null while the score is held back. */
  readonly outcome: RepOutcome | null;
  readonly voided: 'aborted' | 'device lost' | null;
  /** The late call it was driven with; null for none. */
  readonly call: CallWord | null;
  /** What to tell the driver, in words; empty where nothing was outside the band. */
  readonly sentence: string;
  /** The same in one or two short words that can be read from afar; empty where there are none. */
  readonly glance: readonly string[];
  /** That the leg has proved tired with this rep; null where there is nothing to warn of. */
  readonly warning: string | null;
}

/** What a block of reps came to. Medians over scored reps, zeros included. */
export interface BlockSummary {
  readonly reps: number;
  readonly aborted: number;
  readonly medianScore: number | null;
  readonly medianReleaseErrorLevel: number | null;
  readonly averageErrorLevel: number | null;
  /** Root mean square over the release of the standard deviation between reps; null under three reps. */
  readonly spreadLevel: number | null;
  /** Named from three reps or more. */
  readonly cause: Cause | null;
  readonly causeReps: number;
  /** What three reps or more share, what comes first first; at most two. */
  readonly troubles: readonly SharedTrouble[];
  /** One sentence on what to change in the next block. */
  readonly sentence: string;
  readonly diagnosis: BlockDiagnosis;
}

/** The summary of a block's reps on one target. */
export interface TargetSummary {
  readonly targetName: string;
  readonly summary: BlockSummary;
}

/** Where a planned practice is. */
export interface PlanView {
  readonly name: string;
  /** Block and why it is driven, for a title. */
  readonly title: string;
  /** Between blocks: what the driver has to be told. */
  readonly notes: readonly string[];
  /** Between blocks: every target of the block, the one with most reps first. */
  readonly summaries: readonly TargetSummary[];
  /** Null where the practice is no laps of an event. */
  readonly lap: LapView | null;
}

export interface DeviceHealth {
  /** Device name, safe to print. */
  readonly name: string;
  /** Reports per second while moving or streaming; null before the first report. */
  readonly rateHz: number | null;
  readonly connected: boolean;
  /** True for a device that reports only on change and has not moved yet. */
  readonly waitingForMovement: boolean;
}

/**
 * Everything the screen shows, and all that a simulated driver may know. Times in seconds; levels 0..1; traces are
 * aligned so that 0 is the onset of braking, the start of the target's rise.
 */
export interface DrillView {
  readonly targetName: string;
  readonly cornerType: string;
  readonly rep: number;
  readonly reps: number;
  /** Reps of the block that are over, aborted ones included: fewer than `reps` where it was ended early. */
  readonly done: number;
  readonly feedback: Feedback;
  readonly phase: DrillPhase;
  /** The source's clock at which this view is true. */
  readonly atS: number;
  /** Seconds to the cue during the countdown, else null. */
  readonly toCueS: number | null;
  /** Where the now line stands on the target's time axis; 0 and at rest until the onset is detected. */
  readonly nowS: number;
  /** True where the now line follows the driver's own wheel, and not the clock. */
  readonly paced: boolean;
  /** Null on first-of-day reps. */
  readonly target: Target | null;
  /** Own brake trace; null where it is not to be seen yet. */
  readonly own: Track | null;
  readonly ownSteering: Track | null;
  /** Null before the axis has ever moved, and during a rep that does not show it. */
  readonly brakeLevel: number | null;
  readonly throttleLevel: number | null;
  readonly clutchLevel: number | null;
  readonly steeringDeg: number | null;
  readonly gear: number | null;
  /** Root mean square difference so far; null on reps that hide it. */
  readonly liveErrorLevel: number | null;
  /** Seconds of rest left. */
  readonly restS: number | null;
  /** Newest first. */
  readonly lastReps: readonly RepLine[];
  /** What the driver is asked before the result, as far as it was answered; null where nothing is asked now. */
  readonly rating: RatingUnderWay | null;
  /** Buttons of the wheel that a prompt can name. */
  readonly buttons: readonly LearnedButton[];
  /** What the driver is typing about a rep; null where nothing is typed. */
  readonly note: NoteUnderWay | null;
  /** How the driver wants to see it. */
  readonly display: DisplaySettings;
  /** Row of the list of display settings that is chosen; null while the list is not open. */
  readonly menuRow: number | null;
  /** The rep just finished, once its score may be shown. */
  readonly result: RepLine | null;
  readonly summary: BlockSummary | null;
  readonly health: readonly DeviceHealth[];
  readonly dropped: number;
  /** One line for the driver: why the drill is waiting, what was lost. */
  readonly message: string | null;
  /** In the rest and after a block: what can stand in the place of the usual picture. */
  readonly pictures: RestPictures | null;
  /** What the live car shows; null in a drill over time. */
  readonly live: LiveView | null;
  /** Null in a drill without a plan. */
  readonly plan: PlanView | null;
}
