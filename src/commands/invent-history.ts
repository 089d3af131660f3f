import type { HistoryStore } from '../history/store.ts';
import type { DriverName } from '../input/virtual/driver-preset.ts';
import type { InventedCalendar, InventedPractice } from '../input/virtual/invented-practices.ts';
import type { Target } from '../target/target.ts';
import { inventPractice } from './invent-practice.ts';
import type { InventedProgramme, InventedSubject } from './invented-programme.ts';
import { ProgressLine, type ProgressOutput } from './progress-line.ts';

/** Five first-of-day reps before the blocks. */
const FIRST_REPS = 5;
/** On new pedals a driver is no better than after so many reps; invented. */
const LEFT_ON_NEW_PEDALS = 40;

/** What was written. */
export interface InventedHistory {
  readonly reps: number;
  /** By what was driven. */
  readonly tally: ReadonlyMap<string, number>;
  readonly practices: readonly InventedPractice[];
}

/** Drives the practices of a calendar, one after the other, until all are driven or `stop` asks to end. */
export async function inventHistory(
  store: HistoryStore,
  { practices, pedalWeek }: InventedCalendar,
  { preset, programme }: { readonly preset: DriverName; readonly programme: InventedProgramme },
  output: ProgressOutput,
  stop: { readonly asked: boolean },
): Promise<InventedHistory> {
  const subjectOf = ({ kind }: InventedPractice): InventedSubject =>
    programme[kind] ?? programme.usual;
  const expected = practices.reduce(
    (sum, practice) => sum + repsOf(practice, subjectOf(practice)),
    0,
  );
  const line = new ProgressLine(output, 'reps', expected);
  let written = 0;
  const skills = new Map<string, number>();
  const tally = new Map<string, number>();
  const driven: InventedPractice[] = [];
  for (const [i, practice] of practices.entries()) {
    if (stop.asked) break;
    const isOnNewPedals = practice.week === pedalWeek && practices[i - 1]?.week !== pedalWeek;
    if (isOnNewPedals)
      for (const [skill, reps] of skills) skills.set(skill, Math.min(reps, LEFT_ON_NEW_PEDALS));
    const subject = subjectOf(practice);
    // a plan's practice is one of the usual target, too
    const skill = (subject.plan === null ? subject : programme.usual).name;
    const before = skills.get(skill) ?? 0;
    const known = { reps: before, targets: before > 0 ? targetsOf(programme) : [] };
    const reps = await inventPractice(store, practice, { preset, practised: known }, subject, () =>
      line.show(++written),
    );
    skills.set(skill, before + reps);
    tally.set(subject.name, (tally.get(subject.name) ?? 0) + reps);
    driven.push(practice);
  }
  line.end();
  return { reps: written, practices: driven, tally };
}

function repsOf({ kind }: InventedPractice, { blocks, reps }: InventedSubject): number {
  if (kind === 'plan') return reps;
  return blocks * reps + (kind === 'usual' ? FIRST_REPS : 0);
}

/** Targets over time that the driver knows by now; those of the live car are learned each time. */
function targetsOf(programme: InventedProgramme): Target[] {
  return [programme.usual, programme['other target']].flatMap((subject) =>
    subject === undefined ? [] : [subject.target],
  );
}
