import type { TextUnits } from '../../unit-text.ts';
import { NARROWEST_BANDS } from '../advice-bands.ts';
import { orderTold } from '../order-told.ts';
import type { RepOutcome } from '../rep-score.ts';
import { brakePointTrouble } from './brake-point-trouble.ts';
import type { FoundTrouble, TroublePart } from './found-trouble.ts';
import { gearTrouble } from './gear-trouble.ts';
import { hitTrouble } from './hit-trouble.ts';
import { noRepTrouble } from './no-rep-trouble.ts';
import { releaseTrouble } from './release-trouble.ts';
import { smoothTrouble } from './smooth-trouble.ts';
import { speedTrouble } from './speed-trouble.ts';

/** What most of some reps had wrong in one part of the braking zone. */
export interface SharedTrouble {
  readonly part: TroublePart;
  /** What was wrong, in the driver's words, with the medians of the reps that share it. */
  readonly words: string;
  /** What to do about it, as words that follow `Next block:`. */
  readonly change: string;
  /** Reps that share it. */
  readonly reps: number;
  /** Reps that were looked at for it. */
  readonly of: number;
}

/**
 * What reps of one target have in common: the one thing that cost the reps that share it most points. Before it a corner
 * that most of them entered far too fast or too slow, and then only what may have led there. The order is that of one
 * rep, `orderTold`.
 *
 * @returns at most two, none unless three reps or more share something that is outside the narrowest bands
 */
export function sharedTroubles(
  outcomes: readonly RepOutcome[],
  units: TextUnits = 'metric',
): readonly SharedTrouble[] {
  const speed = speedTrouble(outcomes, units);
  const found = troublesOf(outcomes, units);
  return orderTold(
    speed === null ? [...costly(found), ...nearly(outcomes, units)] : found,
    speed,
  ).map(({ part, fault: { words }, change, reps, of }) => ({ part, words, change, reps, of }));
}

function troublesOf(outcomes: readonly RepOutcome[], units: TextUnits): readonly FoundTrouble[] {
  const scored = outcomes.filter((outcome) => outcome.kind === 'scored');
  return [
    noRepTrouble(outcomes),
    releaseTrouble(scored),
    hitTrouble(scored),
    smoothTrouble(scored, units),
    brakePointTrouble(scored, units),
    gearTrouble(scored, units),
  ].filter((found) => found !== null);
}

/** What costs nothing is worth a word only where it may have led to a speed. */
function costly(found: readonly FoundTrouble[]): readonly FoundTrouble[] {
  return found.filter(({ lost }) => lost > 0);
}

/** A speed that is a little off. */
function nearly(outcomes: readonly RepOutcome[], units: TextUnits): readonly FoundTrouble[] {
  return [speedTrouble(outcomes, units, NARROWEST_BANDS.slowestSpeed) ?? []].flat();
}
