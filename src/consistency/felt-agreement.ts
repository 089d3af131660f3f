import {
  AMOUNT_FEELS,
  readSelfRating,
  type SelfRating,
  TIMING_FEELS,
} from '../drill/self-rating.ts';
import { NARROWEST_BANDS } from '../score/advice-bands.ts';
import type { Reps, SharedMeasure } from './rep-columns.ts';
import { type WeightedKappa, weightedKappa } from './summary/weighted-kappa.ts';

/** How well the driver feels what the pedal did, in some reps. */
export interface FeltAgreement {
  /** Rated and measured reps whose trace was not seen while they were driven. */
  readonly ratings: number;
  /** Fewest of them that say anything. */
  readonly needed: number;
  /** Early, right or late. Null under the reps needed, and where all was felt, or measured, as one and the same. */
  readonly timing: WeightedKappa | null;
  /** Light, right or heavy. */
  readonly amount: WeightedKappa | null;
}

/**
 * About twenty judgements in three categories, two times the square of their number, make the standard error of
 * weighted kappa hold (Cicchetti and Fleiss 1977, Applied Psychological Measurement 1:195; Cicchetti 1981, 5:101).
 */
const REPS_FOR_AGREEMENT = 20;

/** Rows by what was felt, columns by what was measured: below, in and above the band. */
type Table = readonly (readonly number[])[];

/** How often what was felt when something was measured. */
interface FeltCounts {
  readonly ratings: number;
  readonly timing: Table;
  readonly amount: Table;
}

/**
 * Counts what was felt, group by group in the order in which their first rated reps come. Shown reps are left out: there
 * the answer was on the screen.
 *
 * @param groupOf asked once for neighbours that share everything
 */
export function feltCounts(
  { columns, places }: Reps,
  groupOf: (shared: SharedMeasure) => string,
): ReadonlyMap<string, FeltCounts> {
  const { startOfReleaseErrorS, peakError } = columns.numbers;
  const groups = new Map<string, Counting>();
  const ratingOf = ratingReader();
  let [last, counts, felt] = [-1, noCounts(), null as SelfRating | null];
  for (let i = 0; i < places.length; i++) {
    const place = places[i]!;
    const at = columns.sharedAt[place]!;
    if (at !== last) {
      last = at;
      const shared = columns.shared[at]!;
      felt = null;
      if (shared.selfRating === null) continue;
      const group = groupOf(shared);
      counts = groups.get(group) ?? noCounts();
      groups.set(group, counts);
      if (shared.feedback !== 'shown') felt = ratingOf(shared.selfRating);
    }
    if (felt !== null) count(counts, felt, startOfReleaseErrorS[place]!, peakError[place]!);
  }
  return groups;
}

/** Counts that grow. */
interface Counting {
  ratings: number;
  readonly timing: number[][];
  readonly amount: number[][];
}

const noCounts = (): Counting => ({ ratings: 0, timing: emptyTable(), amount: emptyTable() });

function count(counts: Counting, felt: SelfRating, lateS: number, heavy: number): void {
  if (Number.isNaN(lateS) || Number.isNaN(heavy)) return;
  counts.ratings++;
  const timing = counts.timing[TIMING_FEELS.indexOf(felt.timing)]!;
  timing[category(lateS, NARROWEST_BANDS.timingS)]! += 1;
  const amount = counts.amount[AMOUNT_FEELS.indexOf(felt.amount)]!;
  amount[category(heavy, NARROWEST_BANDS.amount)]! += 1;
}

/** The counts of all groups together. */
export function addedCounts(groups: readonly FeltCounts[]): FeltCounts {
  const added = (tables: readonly Table[]): Table =>
    emptyTable().map((row, i) =>
      row.map((_, j) => tables.reduce((sum, table) => sum + table[i]![j]!, 0)),
    );
  return {
    ratings: groups.reduce((sum, { ratings }) => sum + ratings, 0),
    timing: added(groups.map(({ timing }) => timing)),
    amount: added(groups.map(({ amount }) => amount)),
  };
}

/**
 * Agreement of the driver's own ratings with the measurement, beyond chance: weighted kappa with linear weights, so
 * that early for late counts double. Set against each other are the timing that was felt and the start of release, and
 * the amount that was felt and the peak. Right is what lies within what can be felt at all, the same in every week: a
 * band of the driver's own spread would shrink with practice and move the measure.
 */
export function agreementIn({ ratings, timing, amount }: FeltCounts): FeltAgreement {
  const enough = ratings >= REPS_FOR_AGREEMENT;
  return {
    ratings,
    needed: REPS_FOR_AGREEMENT,
    timing: enough ? agreement(timing) : null,
    amount: enough ? agreement(amount) : null,
  };
}

/** What was felt, from its text; null for what is no rating. */
type RatingReader = (text: string) => SelfRating | null;

/** Reads each text once: there are nine, and thousands of reps. */
function ratingReader(): RatingReader {
  const known = new Map<string, SelfRating | null>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const rating = readSelfRating(text);
    known.set(text, rating);
    return rating;
  };
}

/** Null where the driver or the measurement knew but one category: there is nothing to agree about then. */
function agreement(table: Table): WeightedKappa | null {
  const felt = table.filter((row) => row.some((cell) => cell > 0));
  const measured = [0, 1, 2].filter((column) => table.some((row) => row[column]! > 0));
  return felt.length < 2 || measured.length < 2 ? null : weightedKappa(table);
}

const emptyTable = (): number[][] => [
  [0, 0, 0],
  [0, 0, 0],
  [0, 0, 0],
];

/** Below the band, in it, above it. */
function category(value: number, band: number): 0 | 1 | 2 {
  if (Math.abs(value) <= band) return 1;
  return value < 0 ? 0 : 2;
}
