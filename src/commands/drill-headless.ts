import { CAUTIONS } from '../drill/cautions.ts';
import type { DrillSetup } from '../drill/drill-setup.ts';
import { liveRemarks } from '../drill/live/live-remarks.ts';
import { Problem } from '../problem.ts';
import type { CommandContext } from './command.ts';
import { runDrill } from './drill-loop.ts';
import type { DrillOptions } from './drill-options.ts';
import { openPractice, type Practice, seedOf } from './drill-practice.ts';
import { type DrillSubject, findSubject } from './drill-subject.ts';
import { newTold, repTexts, summaryTexts, type Told, toldJson } from './drill-told.ts';
import { type EventEnd, eventEnd, eventEndJson, eventEndLines } from './event-end.ts';
import { openRigSource } from './rig-source.ts';
import { zonedNow } from './zoned-now.ts';

/** One block without a screen: a line per rep, then the block. */
export async function drillHeadless(
  options: DrillOptions,
  context: CommandContext,
): Promise<number> {
  const subject = (await findSubject(options, context.dataDir)) ?? noneNamed();
  const rigSource = await openRigSource(options.source, {
    dataDir: context.dataDir,
    seed: seedOf(options),
    headless: true,
    pointer$: null,
    setUp: null,
  });
  try {
    const practice = await openPractice(options, context, rigSource, subject);
    try {
      for (const line of [rigSource.note, practice.store.notice, ...notesOf(subject)])
        if (line !== null) context.err(`${line}\n`);
      await drive(practice, subject, options, context);
      return 0;
    } finally {
      practice.store.close();
      await practice.source.close();
    }
  } finally {
    await rigSource.source.close();
  }
}

function noneNamed(): never {
  throw new Problem('no corner named', {
    where: 'drill',
    next: 'Name one, for example `ebbline drill hairpin --headless`; `ebbline target list` and `ebbline corner list` show them.',
    exitCode: 2,
  });
}

/** Drives to the end and tells it: in lines as it goes, or as one object when it is over. */
async function drive(
  practice: Practice,
  subject: DrillSubject,
  { json }: DrillOptions,
  { out }: CommandContext,
): Promise<void> {
  const print = (...lines: readonly string[]): void => {
    if (!json) for (const line of lines) out(`${line}\n`);
  };
  print(`${titleOf(subject)}  ${practice.source.label}`, ...remarksOf(practice.setup));
  const told = await driveUnattended(practice, print);
  const end = subject.kind === 'event' ? eventEnd(subject, practice, zonedNow()) : null;
  if (end !== null) print(...eventEndLines(end));
  if (json) out(`${JSON.stringify(jsonOf(told, end, practice))}\n`);
}

async function driveUnattended(
  { source, decoder, setup, log }: Practice,
  print: (...lines: readonly string[]) => void,
): Promise<Told> {
  const told = newTold();
  await runDrill(source, decoder, setup, {
    unattended: true,
    store: (rep) => log.add(rep),
    rate: (rep, rating) => log.rate(rep, rating),
    onRep: (line, rep) => {
      told.reps.push({ line, rep });
      print(...repTexts(told, setup));
    },
    onSummary: (summary, plan) => {
      told.summaries.push({ summary, plan });
      print(...summaryTexts(summary, plan));
    },
  });
  return told;
}

function jsonOf(told: Told, end: EventEnd | null, { setup, driver, log }: Practice): object {
  const drilled = toldJson(told, { setup, driver, practiceId: log.practiceId });
  return end === null ? drilled : { ...drilled, ...eventEndJson(end) };
}

/** What is drilled, in a line. */
export function titleOf(subject: DrillSubject): string {
  if (subject.kind === 'target') return subject.target.name;
  if (subject.kind === 'plan') return subject.plan.name;
  if (subject.kind === 'event') return `${subject.event.name}, ${subject.session.session}`;
  const { car, sheet, variant } = subject;
  return `${sheet.name}, ${variant}  ${car.name}`;
}

function notesOf(subject: DrillSubject): readonly string[] {
  return subject.kind === 'car' ? subject.notes : [];
}

/** The cautions for who drives for the first time, and what the rig leaves to the program; the notes on the choice are told apart. */
export function remarksOf({ live, plan, forceRemark, isFirstRun }: DrillSetup): readonly string[] {
  return [
    ...(isFirstRun ? CAUTIONS : []),
    ...(forceRemark === null ? [] : [forceRemark]),
    ...(live === null ? [] : liveRemarks({ ...live, notes: [] })),
    ...(plan?.remarks ?? []),
  ];
}
