import { buildCar } from '../car/build-car.ts';
import type { CarFile } from '../car/car-file.ts';
import type { RepMeasure } from '../consistency/rep-measure.ts';
import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import type { CornerSheet } from '../corner/corner-sheet.ts';
import type { HistoryStore, StoredRep } from '../history/store.ts';
import { Problem } from '../problem.ts';
import type { BriefSource } from '../report/brief/brief-corner.ts';
import { comparableReps } from '../report/brief/comparable-reps.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { type DerivedTarget, deriveTarget } from '../target/derive/derive-target.ts';
import { wordedNotes } from './worded-notes.ts';

/** Variants whose gears a brief always tells, where a sheet has them. */
const TOLD_GEARS: readonly string[] = ['qualifying', 'race'];
/** Newest reps that say what to try first: a block. */
const NEWEST_REPS = 10;
/** What fits on an eighth of a page. */
const MOST_NOTES = 3;

interface BriefChoice {
  readonly carFile: CarFile;
  /** Null for the first of each sheet. */
  readonly variant: string | null;
  /** Null for whoever drove last. */
  readonly driver: string | null;
}

/**
 * Gathers what a brief says of a corner.
 * @param history null where nothing was ever kept
 * @throws Problem for a variant the sheet does not have, or a corner that needs no brake
 */
export function briefSource(
  sheet: CornerSheet,
  choice: BriefChoice,
  history: HistoryStore | null,
): BriefSource {
  const variant = variantOfSheet(sheet, choice.variant);
  const derived = derive(sheet, choice.carFile, variant.name);
  return {
    derived,
    gears: gearsOf(sheet, choice.carFile, derived),
    words: [sheet.advice, variant.note],
    ...cornerHistory(derived, choice.driver, history),
    notes: history === null ? [] : notesOf(history, sheet.id, choice.driver),
  };
}

/** The driver's reps of just this car, corner and variant that compare with the newest, and its newest outcomes. */
export function cornerHistory(
  derived: DerivedTarget,
  driver: string | null,
  history: HistoryStore | null,
): Pick<BriefSource, 'reps' | 'outcomes'> {
  const driven = history === null ? [] : drivenReps(history, derived, driver);
  const reps = comparableReps(history === null ? [] : measuresOf(history, driven));
  return { reps, outcomes: newestOutcomes(driven, reps) };
}

function derive(sheet: CornerSheet, carFile: CarFile, variant: string): DerivedTarget {
  const car = buildCar(carFile, variantOfSheet(sheet, variant).car);
  return deriveTarget(car, buildCorner(sheet, variant));
}

/** A variant that needs no brake has no downshift either. */
function gearsOf(
  sheet: CornerSheet,
  carFile: CarFile,
  derived: DerivedTarget,
): readonly DerivedTarget[] {
  const names = sheet.variants.map(({ name }) => name);
  const others = names.filter(
    (name) => TOLD_GEARS.includes(name) && name !== derived.corner.variant,
  );
  return [
    derived,
    ...others.flatMap((name) => {
      try {
        return derive(sheet, carFile, name);
      } catch (error) {
        if (error instanceof Problem) return [];
        throw error;
      }
    }),
  ];
}

/** Reps of just this car and variant, without late calls: those ask for another target. */
function drivenReps(
  history: HistoryStore,
  { car, corner }: DerivedTarget,
  driver: string | null,
): readonly StoredRep[] {
  const query = { corner: corner.id, ...(driver === null ? {} : { driver }) };
  return [...history.reps(query)].filter(
    (rep) =>
      rep.car === car.id &&
      rep.variant === corner.variant &&
      (rep.live === null || rep.live.call === null),
  );
}

function measuresOf(history: HistoryStore, reps: readonly StoredRep[]): readonly RepMeasure[] {
  const [first] = reps;
  if (first === undefined) return [];
  const ids = new Set(reps.map(({ id }) => id));
  const corner = first.corner === null ? {} : { corner: first.corner };
  return history.measures(corner).filter(({ repId }) => ids.has(repId));
}

function newestOutcomes(
  driven: readonly StoredRep[],
  comparable: readonly RepMeasure[],
): readonly RepOutcome[] {
  const ids = new Set(comparable.map(({ repId }) => repId));
  return driven
    .filter(({ id }) => ids.has(id))
    .flatMap(({ outcomes }) => outcomes.slice(-1))
    .slice(-NEWEST_REPS);
}

function notesOf(history: HistoryStore, corner: string, driver: string | null): readonly string[] {
  const query = { corner, ...(driver === null ? {} : { driver }) };
  const said = wordedNotes(history.notes(query)).filter(({ text }) => text !== '');
  const newest = said.toReversed();
  const left = newest.length - MOST_NOTES;
  return [
    ...newest.slice(0, MOST_NOTES).map(({ text, variant, gear }) => {
      const where = [
        ...(variant === null ? [] : [variant]),
        ...(gear === null ? [] : [`gear ${gear}`]),
      ];
      return where.length === 0 ? text : `${text} (${where.join(', ')})`;
    }),
    ...(left > 0 ? [`and ${left} older: ebbline note list ${corner}`] : []),
  ];
}
