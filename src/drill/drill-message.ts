import type { LiveZone } from '../live/live-zone.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import type { Target } from '../target/target.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { RigBatch } from '../trace/rig-batch.ts';
import type { DisplayPart, DisplaySettings } from './display/display-settings.ts';
import type { DeviceHealth, Feedback } from './drill-view.ts';
import type { NoteKey } from './note-typing.ts';
import type { RepOrder, RepPhase } from './plan/practice-plan.ts';
import type { TargetChange } from './plan/target-change.ts';
import type { RatingKey, SelfRating } from './self-rating.ts';

/** What the driver asks for by key or by learned wheel button. */
export type KeyAction =
  | 'next'
  | 'repeat'
  | 'pause'
  | 'feedback'
  | 'note'
  | 'finish'
  /** Turns the driver's own rating on or off. */
  | 'self-rating'
  /** Opens or closes the list of display settings. */
  | 'display'
  /** Changes one of them. */
  | DisplayPart
  /** Keys of a list. */
  | 'up'
  | 'down'
  | 'choose'
  | 'close'
  /** One of the three answers to it. */
  | RatingKey;

/** Everything the drill reacts to. `batch` is its only clock. */
export type DrillMessage =
  | {
      readonly kind: 'batch';
      readonly batch: RigBatch;
      readonly health: readonly DeviceHealth[];
    }
  | { readonly kind: 'key'; readonly action: KeyAction }
  /** While a note is typed. */
  | { readonly kind: 'type'; readonly key: NoteKey }
  /** The answer to a `score` effect; `rep` is the number it carried. */
  | { readonly kind: 'scored'; readonly rep: number; readonly outcome: RepOutcome }
  | { readonly kind: 'device-lost'; readonly name: string }
  | { readonly kind: 'device-back'; readonly name: string };

/** Place and circumstances of a rep. */
export interface RepTag {
  /** In the practice, from 1; every attempt has its own. */
  readonly number: number;
  /** In its block, from 1. A rep lost with its device is driven again in the same place. */
  readonly place: number;
  /** Block of the practice, from 1. */
  readonly block: number;
  readonly phase: RepPhase;
  readonly feedback: Feedback;
}

/** A rep to be written down before the driver is told about it. */
export interface FinishedRep extends RepTag {
  readonly target: Target;
  /** How the plan changed it; null for the plain target. */
  readonly targetChange: TargetChange | null;
  /** Null in a drill over time. */
  readonly zone: LiveZone | null;
  readonly order: RepOrder;
  /** What the plan says is different about it; null for nothing. */
  readonly condition: string | null;
  /** What the driver said before it was written down; a later one comes as a `rate` effect. */
  readonly rating: SelfRating | null;
  readonly voided: 'aborted' | 'device lost' | null;
  readonly record: RepRecord;
  /** Null for a void rep. */
  readonly outcome: RepOutcome | null;
}

/** A rep that is over is to be scored; the answer is a `scored` message. */
export interface ScoreEffect {
  readonly kind: 'score';
  readonly rep: number;
  readonly record: RepRecord;
  readonly target: Target;
  /** The release was paced by the driver's own wheel. */
  readonly paced: boolean;
  /** Null in a drill over time. */
  readonly zone: LiveZone | null;
}

/** What the drill wants done. Effects are done in order, before the next view is shown. */
export type DrillEffect =
  | ScoreEffect
  | { readonly kind: 'store'; readonly rep: FinishedRep }
  /** The driver has rated a rep that is already written down. */
  | { readonly kind: 'rate'; readonly rep: number; readonly rating: SelfRating }
  /** The driver marks this rep, which is written down, to put something about it into words later. */
  | { readonly kind: 'note'; readonly rep: number }
  /** What the driver has typed about a rep that was marked. */
  | { readonly kind: 'note-text'; readonly rep: number; readonly text: string }
  /** The driver wants the picture so from now on. */
  | { readonly kind: 'display'; readonly settings: DisplaySettings }
  | { readonly kind: 'end' };
