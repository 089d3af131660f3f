import { REP_NUMBERS, type RepColumns, type SharedMeasure } from './rep-columns.ts';
import type { RepMeasure, RepNumbers } from './rep-measure.ts';

/** Measures as columns, in the same order. */
export function measureColumns(measures: readonly RepMeasure[]): RepColumns {
  const [shared, sharedAt] = sharedMeasures(measures);
  const column = (name: keyof RepNumbers): Float64Array =>
    Float64Array.from(measures, ({ numbers }) => numbers?.[name] ?? Number.NaN);
  return {
    repIds: Float64Array.from(measures, ({ repId }) => repId),
    shared,
    sharedAt,
    numbers: {
      score: column('score'),
      releaseErrorLevel: column('releaseErrorLevel'),
      averageErrorLevel: column('averageErrorLevel'),
      startOfReleaseErrorS: column('startOfReleaseErrorS'),
      peakError: column('peakError'),
      reapplications: column('reapplications'),
    },
  };
}

/** Columns as one measure for each rep, for whoever looks at a few of them. */
export function measuresOf({ repIds, shared, sharedAt, numbers }: RepColumns): RepMeasure[] {
  const known = (name: keyof RepNumbers, place: number): number | null => {
    const value = numbers[name][place]!;
    return Number.isNaN(value) ? null : value;
  };
  return Array.from(repIds, (repId, place) => {
    const score = known('score', place);
    const rest = REP_NUMBERS.map((name) => [name, known(name, place)]);
    return {
      ...shared[sharedAt[place]!]!,
      repId,
      numbers: score === null ? null : { ...(Object.fromEntries(rest) as RepNumbers), score },
    };
  });
}

function sharedMeasures(measures: readonly RepMeasure[]): [SharedMeasure[], Uint32Array] {
  const shared: SharedMeasure[] = [];
  const places = new Map<string, number>();
  const sharedAt = Uint32Array.from(measures, ({ repId: _, numbers: __, ...own }) => {
    const key = JSON.stringify(own);
    const place = places.get(key) ?? shared.push(own) - 1;
    places.set(key, place);
    return place;
  });
  return [shared, sharedAt];
}
