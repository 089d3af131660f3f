import type { CarFile } from '../../car/car-file.ts';
import type { CornerSheet } from '../../corner/corner-sheet.ts';
import type { LiveControls } from '../../live/live-zone.ts';

/** What the drill with the live car is about, decided before its first rep. */
export interface LivePlan {
  readonly car: CarFile;
  readonly sheet: CornerSheet;
  /** One of the sheet's. */
  readonly variant: string;
  readonly controls: LiveControls;
  /**
   * A stint: heat and fade carry over from rep to rep, with so many seconds of cooling between two stops. Null where
   * every rep begins at the car's start temperatures.
   */
  readonly stintS: number | null;
  /** Share of reps with a late call, 0..1. */
  readonly callShare: number;
  /** What the driver has to know about the choice of car and corner, for example that none was named. */
  readonly notes: readonly string[];
}
