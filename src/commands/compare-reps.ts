import { addDays } from '../consistency/iso-week.ts';
import type { RepMeasure } from '../consistency/rep-measure.ts';
import { sinceBreak } from '../consistency/weeks/since-break.ts';
import type { NumberedRecord } from '../drill/compare/compared-rep.ts';
import { LEAST_CURVES } from '../drill/diagnosis/mean-curve.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { HistoryStore, StoredRep } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import { overTime } from '../target/over-time.ts';
import type { Target } from '../target/target.ts';
import type { CommandContext } from './command.ts';
import { StoredSubjects } from './stored-subject.ts';
import { findTarget } from './target-files.ts';

export interface RigWish {
  readonly subject: { readonly kind: 'target' | 'corner'; readonly name: string };
  readonly driver: string | null;
  readonly weeks: number;
}

/** Reps on the rig, and the target that both sides are held against. */
export interface RigSide {
  /** Over time. */
  readonly target: Target;
  readonly reps: readonly NumberedRecord[];
  /** Which reps they are, in words. */
  readonly words: string;
  /** Speed of the approach; null for a target that knows none. */
  readonly entryMps: number | null;
  readonly isLive: boolean;
  readonly cautions: readonly string[];
}

/** @throws Problem where nothing was driven, or what was driven cannot be built again */
export async function rigSide(wish: RigWish, context: CommandContext): Promise<RigSide> {
  const history = openExistingHistory(context.dataDir);
  if (history === null)
    throw new Problem('there are no reps yet', {
      where: context.dataDir,
      next: 'Drive some with `ebbline drill`, or name another folder with --data-dir.',
    });
  try {
    if (history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    return await sideOf(history, wish, context.dataDir);
  } finally {
    history.close();
  }
}

async function sideOf(history: HistoryStore, wish: RigWish, dataDir: string): Promise<RigSide> {
  const { kind, name } = wish.subject;
  const named = kind === 'target' ? await findTarget(name, dataDir) : null;
  const own = wish.driver === null ? {} : { driver: wish.driver };
  const query = named === null ? { corner: name, ...own } : { targetId: named.id, ...own };
  const stored = new Map([...history.reps(query)].map((rep) => [rep.id, rep]));
  const plain = history
    .measures(query)
    .filter(({ repId }) => (stored.get(repId)?.live?.call ?? null) === null);
  const newest = plain.at(-1);
  if (newest === undefined) throw noReps(history, wish);
  const chosen = chosenOf(plain, newest, wish.weeks);
  const target = named === null ? null : overTime(named);
  const subject = target ?? (await liveTarget(stored.get(newest.repId)!, dataDir));
  return {
    target: subject,
    reps: chosen.reps.map(({ repId }) => ({ number: repId, record: history.record(repId) })),
    words: wordsOf(chosen, newest),
    entryMps: (named ?? subject).speeds?.entryMps ?? null,
    isLive: named === null,
    cautions:
      subject.version === newest.conditions.targetVersion
        ? []
        : [`Target ${subject.id} has been changed since these reps.`],
  };
}

interface ChosenReps {
  readonly reps: readonly RepMeasure[];
  readonly kind: 'hidden' | 'shown and hidden';
}

/** On the track nothing is shown: hidden reps where there are enough of them. */
function chosenOf(measures: readonly RepMeasure[], newest: RepMeasure, weeks: number): ChosenReps {
  const from = addDays(newest.day, 1 - 7 * weeks);
  const all = sinceBreak(measures).filter(
    ({ day, voided, warmUp }) => day >= from && voided === null && !warmUp,
  );
  const hidden = all.filter(({ feedback }) => feedback !== 'shown');
  return hidden.length >= LEAST_CURVES
    ? { reps: hidden, kind: 'hidden' }
    : { reps: all, kind: 'shown and hidden' };
}

function wordsOf({ reps, kind }: ChosenReps, newest: RepMeasure): string {
  const first = reps[0]?.day ?? newest.day;
  const days = first === newest.day ? newest.day : `${first} to ${newest.day}`;
  return `${kind} reps of ${cleanText(newest.driver)}, ${days}`;
}

async function liveTarget(rep: StoredRep, dataDir: string): Promise<Target> {
  const zone = await new StoredSubjects(dataDir).zone(rep);
  if (zone.kind === 'rebuilt') return zone.value.target;
  throw new Problem(`the zone of these reps cannot be built again: ${zone.reason}`, {
    where: rep.corner ?? rep.targetId,
    next: 'Drill the corner as it is now, or compare with --target.',
  });
}

function noReps(history: HistoryStore, { subject: { kind, name }, driver }: RigWish): Problem {
  const names = new Set<string>();
  for (const rep of history.reps(driver === null ? {} : { driver }))
    names.add(rep.corner === null ? `--target ${rep.targetId}` : `--corner ${rep.corner}`);
  const whose = driver === null ? '' : ` by ${driver}`;
  return new Problem(`there are no reps of ${kind} ${JSON.stringify(name)}${whose}`, {
    next:
      names.size === 0
        ? 'There are none at all: drive some with `ebbline drill`, or leave --driver out.'
        : `There are reps for ${[...names].map((one) => cleanText(one)).join(', ')}.`,
  });
}
