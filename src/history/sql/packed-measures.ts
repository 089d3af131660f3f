import type { RepMeasure, RepNumbers } from '../../consistency/rep-measure.ts';
import { measureMaker } from '../rep-measure-of.ts';
import type { RepQuery, StoredPractice } from '../store.ts';
import type { MeasurePack } from './measure-pack.ts';
import type { RepKind } from './measure-row.ts';
import type { PracticePack } from './practice-packs.ts';

/**
 * The reps of a query as numbers, oldest first. What the reps of a practice share is looked at once for each kind of
 * them, so that years of reps cost little more than the numbers.
 */
export function packedMeasures(packs: readonly PracticePack[], query: RepQuery): RepMeasure[] {
  const make = measureMaker();
  const [measures, times]: [RepMeasure[], number[]] = [[], []];
  const since = query.sinceUtcMs ?? Number.NEGATIVE_INFINITY;
  for (const { practice, pack } of packs) {
    const shared = pack.kinds.map((kind) => sharedOf(kind, practice, query, make));
    for (let rep = 0; rep < pack.reps; rep++) {
      const own = shared[pack.kind(rep)];
      if (own === undefined) throw new RangeError(`practice ${practice.id} has no such kind`);
      const utcMs = pack.number(rep, 1);
      if (own === null || utcMs < since) continue;
      const numbers = own.conditions.scoreVersion === null ? null : numbersOf(pack, rep);
      measures.push({ ...own, repId: pack.number(rep, 0), numbers });
      times.push(utcMs);
    }
  }
  const sorted = byTime(measures, times);
  return query.limit === undefined
    ? sorted
    : sorted.slice(Math.max(0, sorted.length - query.limit));
}

/** What all reps of a kind have; null where the query does not ask for them. */
function sharedOf(
  kind: RepKind,
  practice: StoredPractice,
  { targetId, targetVersion, corner }: RepQuery,
  make: ReturnType<typeof measureMaker>,
): RepMeasure | null {
  const isAsked =
    (targetId ?? kind.targetId) === kind.targetId &&
    (targetVersion ?? kind.targetVersion) === kind.targetVersion &&
    (corner ?? kind.corner) === kind.corner;
  return isAsked ? make(practice, { ...kind, id: 0 }, kind.scoreVersion, null) : null;
}

function numbersOf(pack: MeasurePack, rep: number): RepNumbers {
  return {
    score: pack.number(rep, 2),
    releaseErrorLevel: known(pack.number(rep, 3)),
    averageErrorLevel: known(pack.number(rep, 4)),
    startOfReleaseErrorS: known(pack.number(rep, 5)),
    reapplications: known(pack.number(rep, 6)),
  };
}

function known(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}

/** Practices rarely overlap, so that their reps nearly always follow each other already. */
function byTime(measures: RepMeasure[], times: readonly number[]): RepMeasure[] {
  const isBefore = (a: number, b: number): number =>
    times[a]! - times[b]! || measures[a]!.repId - measures[b]!.repId;
  if (measures.every((_, i) => i === 0 || isBefore(i - 1, i) < 0)) return measures;
  return [...measures.keys()].sort(isBefore).map((i) => measures[i]!);
}
