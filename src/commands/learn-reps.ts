import type { RepMeasure } from '../consistency/rep-measure.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { HistoryStore, RepQuery, StoredRep } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import { idOfFile } from '../profile/id-of-file.ts';
import { nearest } from '../profile/nearest.ts';
import { bestReps } from '../target/learn/best-reps.ts';
import { learnRepOf, sorted } from '../target/learn/learn-rep-of.ts';
import type { LearnedWords } from '../target/learn/learned-file.ts';
import type { FullScale } from '../target/target.ts';
import { findCar } from './car-files.ts';
import type { CommandContext } from './command.ts';
import { findCorner } from './corner-files.ts';
import type { Chosen } from './learn-zones.ts';
import { findTarget } from './target-files.ts';

interface RepsWish {
  /** Id of a target or a corner. */
  readonly name: string;
  readonly driver: string | null;
  readonly best: number;
}

/** The driver's own best reps of a target or a corner. @throws Problem where there are none */
export async function chosenReps(wish: RepsWish, context: CommandContext): Promise<Chosen> {
  const history = openExistingHistory(context.dataDir);
  if (history === null)
    throw new Problem('there are no reps yet', {
      where: context.dataDir,
      next: 'Drive some with `ebbline drill`, or learn from a log with --trace.',
    });
  try {
    if (history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    return await chooseFrom(history, wish, context.dataDir);
  } finally {
    history.close();
  }
}

async function chooseFrom(history: HistoryStore, wish: RepsWish, dataDir: string): Promise<Chosen> {
  const query = queryOf(history, wish);
  const stored = new Map([...history.reps(query)].map((rep) => [rep.id, rep]));
  const plain = history.measures(query).filter(({ repId }) => !isCalled(stored.get(repId)));
  const { reps, of } = bestReps(plain, wish.best);
  const newest = plain.at(-1);
  const taken = reps.map(({ repId }) => learnRepOf(history.record(repId), repId));
  const { used, leftOut } = sorted(taken);
  const fed = reps.filter(({ repId }) => used.some(({ number }) => number === repId));
  const count = (kind: RepMeasure['feedback']): number =>
    fed.filter(({ feedback }) => feedback === kind).length;
  const rep = newest === undefined ? undefined : stored.get(newest.repId);
  return {
    source: {
      kind: 'reps',
      name: wish.name,
      choice: `the best by their score of ${of} comparable ones on ${wish.name}, driver ${cleanText(newest?.driver ?? '')}`,
      used,
      leftOut,
      feedback: {
        shown: count('shown'),
        hidden: count('hidden'),
        firstOfDay: count('first-of-day'),
      },
    },
    words: await wordsOf(rep, wish.name, dataDir),
    cautions: [
      'The best reps by their score: closer to the target they were driven on, and to each other, than all of them.',
      ...(rep?.live == null
        ? []
        : [
            'With the live car, at the speeds it had: over time the learned target knows nothing of them.',
          ]),
    ],
  };
}

/** A late call asks for another target. */
function isCalled(rep: StoredRep | undefined): boolean {
  return rep?.live?.call != null;
}

function queryOf(history: HistoryStore, { name, driver }: RepsWish): RepQuery {
  const own = driver === null ? {} : { driver };
  const queries: RepQuery[] = [
    { targetId: name, ...own },
    { corner: name, ...own },
    // drilled by its path, a target is kept under the name of its file
    { targetId: idOfFile(name), ...own },
  ];
  const found = queries.find((query) => history.measures({ ...query, limit: 1 }).length > 0);
  if (found !== undefined) return found;
  throw unknownReps(history, name, driver);
}

function unknownReps(history: HistoryStore, name: string, driver: string | null): Problem {
  const all = history.measures({});
  const drivers = [...new Set(all.map((rep) => rep.driver))];
  if (driver !== null && !drivers.includes(driver)) return noneOf('driver', driver, drivers);
  const names = new Set<string>();
  for (const { targetId, corner } of history.reps(driver === null ? {} : { driver }))
    names.add(corner ?? targetId);
  return noneOf('target or corner', name, [...names]);
}

function noneOf(what: string, name: string, known: readonly string[]): Problem {
  const close = nearest(name, known);
  const guess = close === null ? '' : `Did you mean ${cleanText(close)}? `;
  return new Problem(`there are no reps of ${what} ${JSON.stringify(name)}`, {
    next:
      known.length === 0
        ? 'There are none at all: drive some with `ebbline drill`.'
        : `${guess}There are reps of: ${known.map((one) => cleanText(one)).join(', ')}.`,
  });
}

/** Name, type and full scale of what was driven, where its files are still there. */
async function wordsOf(
  rep: StoredRep | undefined,
  name: string,
  dataDir: string,
): Promise<Chosen['words']> {
  try {
    if (rep?.live != null && rep.corner !== null && rep.car !== null) {
      const [corner, car] = [
        await findCorner(rep.corner, dataDir),
        await findCar(rep.car, dataDir),
      ];
      const force = car.full_scale_pedal_force_n;
      const fullScale = force === undefined ? null : { pedal_force_n: force };
      return { name: `${corner.name}, learned`, cornerType: corner.cornerType, fullScale };
    }
    const target = await findTarget(name, dataDir);
    const fullScale = fullScaleKeys(target.fullScale);
    return { name: `${target.name}, learned`, cornerType: target.cornerType, fullScale };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { name: `${name}, learned`, cornerType: 'learned corner', fullScale: null };
  }
}

function fullScaleKeys({ pedalForceN, pressureBar }: FullScale): LearnedWords['fullScale'] {
  if (pedalForceN === null && pressureBar === null) return null;
  return {
    ...(pedalForceN === null ? {} : { pedal_force_n: pedalForceN }),
    ...(pressureBar === null ? {} : { pressure_bar: pressureBar }),
  };
}
