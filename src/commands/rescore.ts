import { setImmediate } from 'node:timers/promises';
import { openExistingHistory } from '../history/open-history.ts';
import type { HistoryStore, StoredRep } from '../history/store.ts';
import { Problem } from '../problem.ts';
import { LIVE_SCORE_VERSION } from '../score/live-score-version.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { scoreLiveRep } from '../score/score-live-rep.ts';
import { scorePacedRep } from '../score/score-paced-rep.ts';
import { scoreRep } from '../score/score-rep.ts';
import { SCORE_VERSION } from '../score/score-version.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { driverOption } from './driver-option.ts';
import { GIVEN_TARGET } from './given-target.ts';
import { givenTargets } from './given-targets.ts';
import { interruptible } from './interrupted.ts';
import { misuseOf } from './misuse-of.ts';
import { ProgressLine, type ProgressOutput, STDERR_PROGRESS } from './progress-line.ts';
import { refuseUnknownDriver } from './refuse-unknown-driver.ts';
import { type RepFate, type Rescoring, rescoringJson, rescoringText } from './rescoring.ts';
import { sinceOption } from './since-option.ts';
import { type Rebuilt, StoredSubjects } from './stored-subject.ts';

const misuse = misuseOf('rescore');

/** Computes new scores beside the stored ones. */
export const command: Command = {
  name: 'rescore',
  summary: 'compute scores of another version beside the stored ones',
  positionals: '',
  options: {
    'score-version': {
      type: 'string',
      value: 'N',
      help: `${SCORE_VERSION} for reps over time, ${LIVE_SCORE_VERSION} for reps with the live car`,
    },
    since: { type: 'string', value: 'DATE', help: 'only reps from that day on, like 2026-11-25' },
    driver: { type: 'string', value: 'NAME', help: 'only this driver' },
    target: GIVEN_TARGET,
    json: { type: 'boolean', help: 'one JSON object instead of lines' },
  },
  examples: [
    'ebbline rescore --score-version 1',
    'ebbline rescore --score-version 2 --since 2026-11-01 --json',
  ],
  run: (input, context) => interruptible((stop) => rescore(input, context, STDERR_PROGRESS, stop)),
};

/** `rescore` with its output and a switch that ends it after the rep under way. */
export async function rescore(
  { positionals, values }: CommandInput,
  context: CommandContext,
  output: ProgressOutput,
  stop: { readonly asked: boolean },
): Promise<number> {
  if (positionals.length > 0)
    throw misuse('it takes no names', 'Use --driver, --since and --target.');
  const version = wantedVersion(values['score-version']);
  const sinceUtcMs = sinceOption(values.since, 'rescore --since');
  const driver = driverOption(values.driver, 'rescore --driver');
  const query = {
    ...(sinceUtcMs === null ? {} : { sinceUtcMs }),
    ...(driver === null ? {} : { driver }),
  };
  const subjects = new StoredSubjects(
    context.dataDir,
    await givenTargets(values.target, context.dataDir),
  );
  const history = openExistingHistory(context.dataDir);
  if (history === null) throw noHistory(context.dataDir);
  let done: Rescoring;
  try {
    if (history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    refuseUnknownDriver(driver, history, 'rescore --driver');
    const total = history.columns(query).repIds.length;
    const line = new ProgressLine(output, 'reps', total);
    done = await rescoreAll(history, history.reps(query), { version, subjects, line, stop });
    line.end();
  } finally {
    history.close();
  }
  context.out(
    values.json === true ? `${JSON.stringify(rescoringJson(done))}\n` : rescoringText(done),
  );
  return done.interrupted ? 130 : 0;
}

interface Job {
  readonly version: number;
  readonly subjects: StoredSubjects;
  readonly line: ProgressLine;
  readonly stop: { readonly asked: boolean };
}

/** Each new score is kept for good before the next is computed. */
async function rescoreAll(
  history: HistoryStore,
  reps: Iterable<StoredRep>,
  job: Job,
): Promise<Rescoring> {
  const { version, line, stop } = job;
  const fates: RepFate[] = [];
  for (const rep of reps) {
    fates.push(await rescoreOne(history, rep, job));
    line.show(fates.length);
    // lets a signal through
    await setImmediate();
    if (stop.asked) return { version, fates, interrupted: true };
  }
  return { version, fates, interrupted: false };
}

async function rescoreOne(
  history: HistoryStore,
  rep: StoredRep,
  { version, subjects }: Job,
): Promise<RepFate> {
  if (rep.voided !== null) return { kind: 'void', rep: rep.id };
  if (rep.outcomes.some((outcome) => outcome.version === version))
    return { kind: 'known', rep: rep.id };
  const again = await scoreAgain(history, rep, version, subjects);
  if (again.kind === 'lost') return { kind: 'lost', rep: rep.id, reason: again.reason };
  history.addOutcome(rep.id, again.value);
  const before = rep.outcomes.at(-1);
  const change = before === undefined ? null : again.value.score - before.score;
  return { kind: 'scored', rep: rep.id, change };
}

async function scoreAgain(
  history: HistoryStore,
  rep: StoredRep,
  version: number,
  subjects: StoredSubjects,
): Promise<Rebuilt<RepOutcome>> {
  if (version === LIVE_SCORE_VERSION) {
    const zone = await subjects.zone(rep);
    if (zone.kind === 'lost') return zone;
    return { kind: 'rebuilt', value: scoreLiveRep(history.record(rep.id), zone.value) };
  }
  if (rep.live !== null) return { kind: 'lost', reason: 'driven with the live car, not over time' };
  const target = await subjects.target(rep);
  if (target.kind === 'lost') return target;
  const isPaced = rep.targetChange?.kind === 'paced by the steering';
  const score = isPaced ? scorePacedRep : scoreRep;
  return { kind: 'rebuilt', value: score(history.record(rep.id), target.value) };
}

function wantedVersion(text: CommandInput['values'][string]): number {
  const version = [SCORE_VERSION, LIVE_SCORE_VERSION].find((known) => String(known) === text);
  if (version !== undefined) return version;
  throw misuse(
    text === undefined
      ? 'no score version named'
      : `there is no score version ${JSON.stringify(text)}`,
    `Say --score-version ${SCORE_VERSION} for reps over time or ${LIVE_SCORE_VERSION} for reps with the live car.`,
  );
}

function noHistory(dataDir: string): Problem {
  return new Problem('there are no reps yet', {
    where: dataDir,
    next: 'Drive some with `ebbline drill`, or name another folder with --data-dir.',
  });
}
