import type { DisplaySettings } from '../drill/display/display-settings.ts';
import type { FinishedRep } from '../drill/drill-message.ts';
import type { DoneRep } from '../drill/drill-model.ts';
import type { BlockSummary, DrillView, PlanView, RepLine } from '../drill/drill-view.ts';
import type { SelfRating } from '../drill/self-rating.ts';
import type { DriverKeys } from './drill-messages.ts';
import type { SpareTurns } from './spare-turns.ts';

/** What the world does for a drill. */
export interface DrillHooks extends DriverKeys {
  /** Writes a rep down; it has to be safe when this returns, for then the driver is told about it. */
  store(rep: FinishedRep): void;
  /** The driver has rated a rep that was given to `store`. */
  rate?(rep: number, rating: SelfRating): void;
  /** The driver marks a rep that was given to `store`. */
  note?(rep: number): void;
  /** What the driver has typed about a rep that was marked. */
  noteText?(rep: number, text: string): void;
  /** How the driver wants to see the drill from now on. */
  display?(settings: DisplaySettings): void;
  /** Once per batch and after each key; whoever draws it has to thin it out. */
  onView?(view: DrillView): void;
  /** Each rep once, as soon as its result may be read. */
  onRep?(line: RepLine, rep: DoneRep): void;
  /** Once per block. */
  onSummary?(summary: BlockSummary, plan: PlanView | null): void;
  /** Where somebody watches: what can wait goes here. By default it is done at once. */
  readonly spareTurns?: SpareTurns;
  /** Nobody presses keys: goes on after first-of-day reps and through a plan, else ends after the first block. */
  readonly unattended?: boolean;
}
