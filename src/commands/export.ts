import type { Manifest } from '../history/archive/archive-format.ts';
import { writeArchive } from '../history/archive/write-archive.ts';
import { writeRepCsv } from '../history/archive/write-rep-csv.ts';
import type { HistorySnapshot, KeptCounts, KeptQuery } from '../history/kept.ts';
import { openExistingHistory } from '../history/open-history.ts';
import { Problem } from '../problem.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { countedJob, type Surroundings } from './counted-job.ts';
import { countedText } from './counted-text.ts';
import { driverOption } from './driver-option.ts';
import { filesToArchive } from './files-to-archive.ts';
import { Interrupted, interruptible } from './interrupted.ts';
import { misuseOf } from './misuse-of.ts';
import { namesText } from './names-text.ts';
import { STDERR_PROGRESS } from './progress-line.ts';
import { sinceOption } from './since-option.ts';
import { version } from './version.ts';

const misuse = misuseOf('export');

/** Writes the history, or a part of it, to a new archive or spreadsheet. */
export const command: Command = {
  name: 'export',
  summary: 'write reps, notes and files to one archive, or reps to a spreadsheet',
  positionals: '',
  options: {
    out: { type: 'string', value: 'FILE.zip', help: 'the archive; never over an existing file' },
    csv: { type: 'string', value: 'FILE.csv', help: 'a spreadsheet instead: a row for each rep' },
    driver: { type: 'string', value: 'NAME', help: 'only this driver' },
    since: { type: 'string', value: 'DATE', help: 'only reps from that day on, like 2026-11-25' },
    'samples-csv': {
      type: 'boolean',
      help: "also each rep's samples as CSV, as `score` reads them",
    },
    json: { type: 'boolean', help: 'one JSON object instead of a line' },
  },
  apart: [
    {
      one: 'samples-csv',
      others: ['csv'],
      because: 'A spreadsheet has one row for each rep; samples go into an archive.',
    },
  ],
  examples: [
    'ebbline export --out kim.zip --driver Kim',
    'ebbline export --csv reps.csv --since 2026-11-01',
  ],
  run: (input, context) =>
    interruptible((stop) =>
      exportHistory(input, context, { output: STDERR_PROGRESS, stop, nowUtcMs: Date.now() }),
    ),
};

/** `export` with its surroundings passed in. */
async function exportHistory(
  { positionals, values }: CommandInput,
  context: CommandContext,
  around: Surroundings,
): Promise<number> {
  if (positionals.length > 0) throw misuse('it takes no names', 'Use --out FILE.zip.');
  const [out, csv] = [fileOf(values.out), fileOf(values.csv)];
  if ((out === null) === (csv === null))
    throw misuse('an export needs one file', 'Say --out FILE.zip, or --csv FILE.csv.');
  const driver = driverOption(values.driver, 'export --driver');
  const since = sinceOption(values.since, 'export --since');
  const query = {
    ...(driver === null ? {} : { driver }),
    ...(since === null ? {} : { sinceUtcMs: since }),
  };
  const job = { query, samplesCsv: values['samples-csv'] === true, around };
  const history = openExistingHistory(context.dataDir);
  if (history === null) throw nothingKept(context.dataDir);
  try {
    if (history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    const snapshot = history.snapshot();
    try {
      const counts = snapshot.counts(query);
      if (counts.reps + counts.notes === 0) throw nothingOf(query, snapshot);
      const told =
        out === null
          ? await spreadsheet(csv!, snapshot, counts, job)
          : await archive(out, snapshot, counts, { ...job, context });
      context.out(values.json === true ? `${JSON.stringify(told.json)}\n` : `${told.text}\n`);
      return 0;
    } finally {
      snapshot.close();
    }
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    context.err('ebbline: interrupted; nothing was written\n');
    return 130;
  } finally {
    history.close();
  }
}

interface Job {
  readonly query: KeptQuery;
  readonly samplesCsv: boolean;
  readonly around: Surroundings;
}

interface Told {
  readonly text: string;
  readonly json: object;
}

async function archive(
  path: string,
  snapshot: HistorySnapshot,
  counts: KeptCounts,
  { query, samplesCsv, around, context }: Job & { readonly context: CommandContext },
): Promise<Told> {
  const files = await filesToArchive(snapshot, query, context.dataDir, context.err);
  const manifest = await countedJob(counts, around, (repDone) =>
    writeArchive(
      path,
      snapshot,
      { query, files, samplesCsv, programVersion: version(), exportedAtUtcMs: around.nowUtcMs },
      repDone,
    ),
  );
  const all = countedText({ ...manifest.counts, files: files.length });
  return {
    text: `Wrote ${all} to ${path}.\nDrivers: ${namesText(manifest.drivers)}.`,
    json: manifestJson(path, manifest, files.length),
  };
}

function manifestJson(path: string, manifest: Manifest, files: number): object {
  const { practices, reps, notes } = manifest.counts;
  return {
    file: path,
    format: manifest.format,
    exported_at: manifest.exportedAt,
    drivers: manifest.drivers,
    practice_count: practices,
    rep_count: reps,
    note_count: notes,
    file_count: files,
  };
}

async function spreadsheet(
  path: string,
  snapshot: HistorySnapshot,
  { reps }: KeptCounts,
  { query, around }: Job,
): Promise<Told> {
  await countedJob({ reps }, around, (repDone) => writeRepCsv(path, snapshot, query, repDone));
  return {
    text: `Wrote ${countedText({ reps })} to ${path}: UTF-8, commas, decimal point.`,
    json: {
      file: path,
      format: null,
      exported_at: null,
      drivers: null,
      practice_count: null,
      rep_count: reps,
      note_count: null,
      file_count: null,
    },
  };
}

function fileOf(value: CommandInput['values'][string]): string | null {
  return typeof value === 'string' && value !== '' ? value : null;
}

function nothingKept(dataDir: string): Problem {
  return new Problem('there is no history to export', {
    where: dataDir,
    next: 'Drive some reps with `ebbline drill`, or say where the history is with --data-dir.',
  });
}

function nothingOf({ driver, sinceUtcMs }: KeptQuery, snapshot: HistorySnapshot): Problem {
  const drivers = new Set<string>();
  for (const { start } of snapshot.practices({})) drivers.add(start.driver);
  const of = driver === undefined ? '' : ` of ${JSON.stringify(driver)}`;
  const when = sinceUtcMs === undefined ? '' : ' since that day';
  return new Problem(`there are no reps and no notes${of}${when}`, {
    where: 'export',
    next:
      drivers.size === 0
        ? 'Drive some reps with `ebbline drill`.'
        : `There are reps of: ${namesText([...drivers])}.`,
  });
}
