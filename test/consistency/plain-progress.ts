import { addDays, isoWeek, mondayOf } from '../../src/consistency/iso-week.ts';
import type { Conditions, RepMeasure, RepNumbers } from '../../src/consistency/rep-measure.ts';

/*
 * What the statistics of years of reps have to come to, worked out rep by rep over plain objects and without a thought
 * of how long it takes: lists, filters and sorting, no columns.
 */

export interface PlainWeek {
  readonly monday: string;
  readonly changed: readonly string[];
  readonly reps: number;
  readonly practices: number;
  readonly hiddenErrors: readonly number[];
  readonly firstErrors: readonly number[];
  readonly spread: number | null;
}

export interface PlainDay {
  readonly day: string;
  readonly week: string;
  readonly changed: readonly string[];
  readonly counts: readonly number[];
  readonly medianScore: number | null;
  readonly medianError: number | null;
  readonly averageError: number | null;
  readonly spread: number | null;
  readonly timingSpreadS: number | null;
  readonly reapplications: number | null;
}

export interface PlainSeries {
  readonly name: string;
  readonly since: string;
  readonly weeks: readonly PlainWeek[];
  readonly days: readonly PlainDay[];
  /** Practice, reps and median release error of each point of the control chart. */
  readonly chart: readonly (readonly number[])[];
  /** Hidden reps before and now that the change of the spread is made of. */
  readonly compared: readonly number[];
  readonly latestReps: readonly number[] | null;
  readonly rated: number;
}

export function plainProgress(reps: readonly RepMeasure[], today: string): PlainSeries[] {
  const names = [...new Set(reps.map(nameOf))];
  return names.map((name) =>
    plainSeries(
      name,
      reps.filter((rep) => nameOf(rep) === name),
      today,
    ),
  );
}

const nameOf = ({ driver, targetId, conditions }: RepMeasure): string =>
  JSON.stringify([driver, targetId, conditions.source, conditions.foot, conditions.condition]);

interface Cut {
  readonly reps: RepMeasure[];
  readonly changed: readonly string[];
}

function plainSeries(name: string, reps: readonly RepMeasure[], today: string): PlainSeries {
  const segments = cutWhere(reps, () => false, false);
  const own = segments.at(-1)!.reps;
  const practices = byPractice(hidden(own), 'releaseErrorLevel');
  const [now, before] = [addDays(today, -13), addDays(today, -41)];
  const between = (from: string, to: string): number =>
    byPractice(
      hidden(own).filter(({ day }) => day >= from && day <= to),
      'averageErrorLevel',
    )
      .map(({ values }) => values.length)
      .filter((count) => count > 1)
      .reduce((sum, count) => sum + count, 0);
  const latest = practices.findLast(({ values }) => values.length >= 10);
  return {
    name,
    since: own[0]!.day,
    weeks: segments.flatMap((segment) => weeksOf(segment)),
    days: cutWhere(reps, (one, other) => one.day !== other.day, true).map(dayOf),
    chart: practices
      .map(({ id, values }) => [id, values.length, middle(values)!])
      .filter(([, count, level]) => count! >= 8 && level! > 0),
    compared: [between(before, addDays(today, -28)), between(now, today)],
    latestReps:
      latest === undefined
        ? null
        : hidden(own)
            .filter(({ practiceId }) => practiceId === latest.id)
            .map(({ repId }) => repId),
    rated: own.filter(
      ({ selfRating, feedback, numbers }) =>
        selfRating !== null &&
        feedback !== 'shown' &&
        typeof numbers?.startOfReleaseErrorS === 'number' &&
        typeof numbers.peakError === 'number',
    ).length,
  };
}

/**
 * Cuts where conditions change, or where two neighbours are told apart. A void rep has the score version of the reps
 * before; where it is the first after a cut, days still know that version, and what is between two cuts does not.
 */
function cutWhere(
  reps: readonly RepMeasure[],
  isOther: (one: RepMeasure, other: RepMeasure) => boolean,
  isVersionKept: boolean,
): Cut[] {
  const cuts: Cut[] = [];
  let version: number | null = null;
  for (const [i, rep] of reps.entries()) {
    const last = reps[i - 1];
    const own = rep.conditions.scoreVersion;
    const changed =
      last === undefined
        ? []
        : (Object.keys(rep.conditions) as (keyof Conditions)[]).filter((key) =>
            key === 'scoreVersion'
              ? own !== null && version !== null && own !== version
              : last.conditions[key] !== null &&
                rep.conditions[key] !== null &&
                last.conditions[key] !== rep.conditions[key],
          );
    const isCut = last === undefined || changed.length > 0 || isOther(last, rep);
    version = own ?? (isCut && !isVersionKept ? null : version);
    if (isCut) cuts.push({ reps: [rep], changed });
    else cuts.at(-1)!.reps.push(rep);
  }
  return cuts;
}

function weeksOf({ reps, changed }: Cut): PlainWeek[] {
  const parts: RepMeasure[][] = [];
  for (const rep of reps)
    if (parts.length > 0 && mondayOf(parts.at(-1)!.at(-1)!.day) === mondayOf(rep.day))
      parts.at(-1)!.push(rep);
    else parts.push([rep]);
  return parts.map((part, i) => {
    const ran = part.filter(({ voided }) => voided === null);
    const spreads = byPractice(hidden(part), 'averageErrorLevel').filter(
      ({ values }) => values.length > 1,
    );
    const count = spreads.reduce((sum, { values }) => sum + values.length, 0);
    const squares = spreads.reduce((sum, { values }) => sum + squaresOf(values), 0);
    return {
      monday: mondayOf(part[0]!.day),
      changed: i === 0 ? changed : [],
      reps: ran.length,
      practices: new Set(ran.map(({ practiceId }) => practiceId)).size,
      hiddenErrors: inPractices(hidden(part)),
      firstErrors: inPractices(part.filter(isCounted('first-of-day'))),
      spread: count < 10 ? null : Math.sqrt(squares / (count - spreads.length)),
    };
  });
}

function dayOf({ reps, changed }: Cut): PlainDay {
  const ran = reps.filter(({ voided }) => voided === null);
  const values = (name: keyof RepNumbers): number[] =>
    numbersOf(
      ran.filter(({ warmUp }) => !warmUp),
      name,
    );
  const averages = values('averageErrorLevel');
  const deviation = (all: readonly number[]): number | null =>
    all.length < 10 ? null : Math.sqrt(squaresOf(all) / (all.length - 1));
  const ofEight = (value: number | null, all: readonly number[]): number | null =>
    all.length < 8 ? null : value;
  const seen = (feedback: RepMeasure['feedback']): number =>
    ran.filter((rep) => rep.feedback === feedback).length;
  return {
    day: reps[0]!.day,
    week: isoWeek(reps[0]!.day),
    changed,
    counts: [
      ran.length,
      seen('shown'),
      seen('hidden'),
      seen('first-of-day'),
      ran.filter(({ warmUp }) => warmUp).length,
      reps.filter(({ voided }) => voided === 'aborted').length,
      reps.filter(({ voided }) => voided === 'device lost').length,
      values('releaseErrorLevel').length,
    ],
    medianScore: ofEight(middle(values('score')), values('score')),
    medianError: ofEight(middle(values('releaseErrorLevel')), values('releaseErrorLevel')),
    averageError: ofEight(average(averages), averages),
    spread: deviation(averages),
    timingSpreadS: deviation(values('startOfReleaseErrorS')),
    reapplications: average(values('reapplications')),
  };
}

const isCounted =
  (feedback: RepMeasure['feedback']) =>
  (rep: RepMeasure): boolean =>
    !rep.warmUp && rep.voided === null && rep.feedback === feedback;
const hidden = (reps: readonly RepMeasure[]): RepMeasure[] => reps.filter(isCounted('hidden'));

function numbersOf(reps: readonly RepMeasure[], name: keyof RepNumbers): number[] {
  return reps.flatMap(({ numbers }) => numbers?.[name] ?? []);
}

function byPractice(
  reps: readonly RepMeasure[],
  name: keyof RepNumbers,
): { readonly id: number; readonly values: number[] }[] {
  const measured = reps.filter(({ numbers }) => typeof numbers?.[name] === 'number');
  return [...new Set(measured.map(({ practiceId }) => practiceId))].map((id) => ({
    id,
    values: numbersOf(
      measured.filter(({ practiceId }) => practiceId === id),
      name,
    ),
  }));
}

const inPractices = (reps: readonly RepMeasure[]): number[] =>
  byPractice(reps, 'releaseErrorLevel').flatMap(({ values }) => values);

function average(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, one) => sum + one, 0) / values.length;
}

function middle(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  if (sorted.length === 0) return null;
  return Number.isInteger(half)
    ? (sorted[half - 1]! + sorted[half]!) / 2
    : sorted[Math.floor(half)]!;
}

function squaresOf(values: readonly number[]): number {
  const centre = average(values) ?? 0;
  return values.reduce((sum, one) => sum + (one - centre) ** 2, 0);
}
