import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import { Problem } from '../problem.ts';
import { type Picture, pictureFile } from '../report/picture/picture.ts';
import { practicePage, practicePictures } from '../report/review/practice-page.ts';
import { practiceReviewJson, weeksReviewJson } from '../report/review/review-json.ts';
import { weeksPage, weeksPictures } from '../report/review/weeks-page.ts';
import type { Target } from '../target/target.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { driverOption } from './driver-option.ts';
import { findPractice } from './find-practice.ts';
import { GIVEN_TARGET } from './given-target.ts';
import { givenTargets } from './given-targets.ts';
import { misuseOf } from './misuse-of.ts';
import { textOption, weeksOption } from './option-value.ts';
import { practiceReview } from './practice-review.ts';
import { refuseUnknownDriver } from './refuse-unknown-driver.ts';
import { StoredSubjects } from './stored-subject.ts';
import { weeksReview } from './weeks-review.ts';
import { writeNewFile } from './write-new-file.ts';
import { zonedNow } from './zoned-now.ts';

const misuse = misuseOf('report');

/** Writes the page on which a coach reviews a practice, or some weeks. */
export const command: Command = {
  name: 'report',
  summary: 'the review for the coach as one page: a practice, or some weeks',
  positionals: 'PRACTICE | --weeks N [CORNER|TARGET|FILE]',
  options: {
    out: {
      type: 'string',
      value: 'FILE.html',
      help: 'write the page; never over an existing file',
    },
    svg: { type: 'string', value: 'DIR', help: 'write each picture as a file of its own' },
    weeks: { type: 'string', value: 'N', help: 'the last N weeks instead of a practice' },
    driver: { type: 'string', value: 'NAME', help: 'only this driver' },
    target: GIVEN_TARGET,
    json: { type: 'boolean', help: 'what the page says as one JSON object' },
  },
  examples: [
    'ebbline report last --out review.html',
    'ebbline report 2026-11-25 --out review.html --target my-corner.yaml',
    'ebbline report --weeks 10 hairpin --out weeks.html --svg pictures',
  ],
  run: (input, context) => report(input, context, zonedNow()),
};

/** `report` with the time passed in. */
export async function report(
  { positionals, values }: CommandInput,
  context: CommandContext,
  now: ZonedInstant,
): Promise<number> {
  const [name, ...more] = positionals;
  if (more.length > 0) throw misuse('it takes one name', 'Leave out the others.');
  const weeks = values.weeks === undefined ? null : weeksOption(values.weeks);
  const driver = driverOption(values.driver, 'report --driver');
  const [out, folder] = [textOption(values.out), textOption(values.svg)];
  if (out === null && folder === null && values.json !== true)
    throw misuse('there is nothing to write', 'Add --out FILE.html, --svg DIR or --json.');
  const given = await givenTargets(values.target, context.dataDir);
  const history = openExistingHistory(context.dataDir);
  if (history === null)
    throw new Problem('there is no practice yet', {
      where: 'report',
      next: 'Drive some reps with `ebbline drill`, or try `ebbline virtual history --help`.',
    });
  try {
    if (history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    refuseUnknownDriver(driver, history, 'report --driver');
    const made =
      weeks === null
        ? await ofPractice(history, { name, driver, given }, context)
        : await ofWeeks(
            history,
            { weeks, subject: name ?? null, driver, today: localDate(now), given },
            context,
          );
    if (out !== null) await writePage(out, made, context);
    if (folder !== null) await writePictures(folder, made.pictures, context);
    if (values.json === true) context.out(`${JSON.stringify(made.json)}\n`);
  } finally {
    history.close();
  }
  return 0;
}

interface Made {
  readonly page: string;
  readonly pictures: readonly Picture[];
  readonly json: object;
}

interface PracticeChoice {
  readonly name: string | undefined;
  readonly driver: string | null;
  readonly given: readonly Target[];
}

async function ofPractice(
  history: HistoryStore,
  { name, driver, given }: PracticeChoice,
  { dataDir, units }: CommandContext,
): Promise<Made> {
  const practice = findPractice(history, name, driver);
  const subjects = new StoredSubjects(dataDir, given);
  const review = await practiceReview(history, practice, subjects, units);
  return {
    page: practicePage(review),
    pictures: practicePictures(review),
    json: practiceReviewJson(review),
  };
}

async function ofWeeks(
  history: HistoryStore,
  choice: Parameters<typeof weeksReview>[1],
  context: CommandContext,
): Promise<Made> {
  const review = await weeksReview(history, choice, context);
  return {
    page: weeksPage(review),
    pictures: weeksPictures(review),
    json: weeksReviewJson(review),
  };
}

async function writePage(path: string, { page }: Made, { err }: CommandContext): Promise<void> {
  await writeNewFile(path, page, 'page');
  err(`Written to ${path}.\n`);
}

async function writePictures(
  folder: string,
  pictures: readonly Picture[],
  { err }: CommandContext,
): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new Problem(`the folder cannot be made: ${(error as Error).message}`, {
      where: folder,
      next: 'Give a folder you may write to.',
    });
  }
  for (const picture of pictures)
    await writeNewFile(join(folder, `${picture.id}.svg`), pictureFile(picture), 'picture');
  err(`${pictures.length} pictures written to ${folder}.\n`);
}
