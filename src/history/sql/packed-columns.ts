import { REP_NUMBERS, type RepColumns, type SharedMeasure } from '../../consistency/rep-columns.ts';
import type { RepNumbers } from '../../consistency/rep-measure.ts';
import { sharedMaker } from '../shared-maker.ts';
import type { RepQuery, StoredPractice } from '../store.ts';
import type { MeasurePack } from './measure-pack.ts';
import type { RepKind } from './measure-row.ts';
import type { PracticePack } from './practice-packs.ts';

/**
 * The reps of a query as columns, oldest first. What the reps of a practice share is looked at once for each kind of
 * them; numbers are copied from column to column.
 */
export function packedColumns(packs: readonly PracticePack[], query: RepQuery): RepColumns {
  const make = sharedMaker();
  const filling = emptyColumns(packs.reduce((sum, { pack }) => sum + pack.reps, 0));
  const since = query.sinceUtcMs ?? Number.NEGATIVE_INFINITY;
  for (const { practice, pack } of packs) {
    const at = pack.kinds.map((kind) =>
      isAsked(kind, query) ? filling.shared.push(make(practice, kind)) - 1 : null,
    );
    addReps(filling, pack, at, since, practice);
  }
  return columnsOf(filling, query.limit ?? filling.count);
}

interface Filling {
  readonly shared: SharedMeasure[];
  readonly sharedAt: Uint32Array;
  /** Of each column of a pack. */
  readonly columns: readonly Float64Array[];
  count: number;
}

const [ID, UTC_MS, NUMBERS] = [0, 1, 2];

function emptyColumns(reps: number): Filling {
  const columns = Array.from(
    { length: NUMBERS + REP_NUMBERS.length },
    () => new Float64Array(reps),
  );
  return { shared: [], sharedAt: new Uint32Array(reps), columns, count: 0 };
}

/** Where in `shared` each kind of a pack stands; null for those nobody asked for. */
type KindPlaces = readonly (number | null)[];

function addReps(
  filling: Filling,
  pack: MeasurePack,
  at: KindPlaces,
  since: number,
  practice: StoredPractice,
): void {
  if (pack.places.some((place) => at[place] === undefined))
    throw new RangeError(`practice ${practice.id} has no such kind`);
  if (since === Number.NEGATIVE_INFINITY && !at.includes(null)) addAll(filling, pack, at);
  else addAsked(filling, pack, at, since);
}

/** Column by column, as nearly all of years are asked for. */
function addAll(filling: Filling, { reps, places, numbers }: MeasurePack, at: KindPlaces): void {
  const { columns, sharedAt, count } = filling;
  for (let column = 0; column < columns.length; column++)
    columns[column]!.set(numbers.subarray(column * reps, (column + 1) * reps), count);
  for (let rep = 0; rep < reps; rep++) sharedAt[count + rep] = at[places[rep]!]!;
  filling.count += reps;
}

function addAsked(
  filling: Filling,
  { reps, places, numbers }: MeasurePack,
  at: KindPlaces,
  since: number,
): void {
  const { columns, sharedAt } = filling;
  for (let rep = 0; rep < reps; rep++) {
    const place = at[places[rep]!] ?? null;
    if (place === null || numbers[UTC_MS * reps + rep]! < since) continue;
    const to = filling.count++;
    sharedAt[to] = place;
    for (let column = 0; column < columns.length; column++)
      columns[column]![to] = numbers[column * reps + rep]!;
  }
}

function isAsked(kind: RepKind, { targetId, targetVersion, corner }: RepQuery): boolean {
  return (
    (targetId ?? kind.targetId) === kind.targetId &&
    (targetVersion ?? kind.targetVersion) === kind.targetVersion &&
    (corner ?? kind.corner) === kind.corner
  );
}

/**
 * Places by time; null where they are in order. Practices rarely overlap, so that their reps nearly always follow each
 * other already.
 */
function inOrder({ columns, count }: Filling): Uint32Array | null {
  const [ids, times] = [columns[ID]!, columns[UTC_MS]!];
  const order = (a: number, b: number): number => times[a]! - times[b]! || ids[a]! - ids[b]!;
  for (let i = 1; i < count; i++)
    if (times[i]! <= times[i - 1]! && order(i - 1, i) >= 0)
      return Uint32Array.from({ length: count }, (_, i) => i).sort(order);
  return null;
}

/** @param limit only the newest so many */
function columnsOf(filling: Filling, limit: number): RepColumns {
  const { columns, shared, sharedAt, count } = filling;
  const order = inOrder(filling);
  const from = Math.max(0, count - limit);
  const taken = (column: Float64Array): Float64Array =>
    order === null
      ? column.subarray(from, count)
      : Float64Array.from(order.subarray(from), (i) => column[i]!);
  const number = (place: number): Float64Array => taken(columns[NUMBERS + place]!);
  return {
    repIds: taken(columns[ID]!),
    shared,
    sharedAt:
      order === null
        ? sharedAt.subarray(from, count)
        : order.subarray(from).map((i) => sharedAt[i]!),
    numbers: Object.fromEntries(REP_NUMBERS.map((name, place) => [name, number(place)])) as Record<
      keyof RepNumbers,
      Float64Array
    >,
  };
}
