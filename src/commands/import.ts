import type { ArchivedFile } from '../history/archive/archive-format.ts';
import { MergeTally } from '../history/archive/merge-report.ts';
import { type Archive, openArchive } from '../history/archive/open-archive.ts';
import { takeInArchive, tryArchive } from '../history/archive/take-in-archive.ts';
import { openExistingHistory, openHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { countedJob, type Surroundings } from './counted-job.ts';
import { driverOption } from './driver-option.ts';
import { filesHere, filesToTakeIn, StagedFiles } from './files-to-take-in.ts';
import { Interrupted, interruptible } from './interrupted.ts';
import { LOCAL_DRIVER } from './local-driver.ts';
import { mergeJson, mergeText } from './merge-text.ts';
import { misuseOf } from './misuse-of.ts';
import { fileKind, headOf, otherFile } from './other-file.ts';
import { STDERR_PROGRESS } from './progress-line.ts';

/** Takes an archive into the history. */
export const command: Command = {
  name: 'import',
  summary: 'take in an archive: what is new is added, nothing is overwritten',
  positionals: 'FILE.zip',
  options: {
    'dry-run': { type: 'boolean', help: 'check everything and say what would be taken in' },
    driver: { type: 'string', value: 'NAME', help: 'whose history it is to be here' },
    json: { type: 'boolean', help: 'one JSON object instead of lines' },
  },
  examples: ['ebbline import kim.zip --dry-run', 'ebbline import from-home.zip --driver Kim'],
  run: (input, context) =>
    interruptible((stop) => importArchive(input, context, { output: STDERR_PROGRESS, stop })),
};

/** `import` with its surroundings passed in. Exit code 1 where something was in conflict. */
async function importArchive(
  { positionals, values }: CommandInput,
  context: CommandContext,
  around: Omit<Surroundings, 'nowUtcMs'>,
): Promise<number> {
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0)
    throw misuseOf('import')(
      `it takes one archive, not ${positionals.length}`,
      'Give the path of a file that `ebbline export --out` wrote.',
    );
  const job: Job = {
    driver: driverOption(values.driver, 'import --driver'),
    isDry: values['dry-run'] === true,
    context,
    around,
  };
  refuseOther(path);
  const archive = await openArchive(path);
  try {
    const report = (await takeIn(archive, job)).report();
    const told = { path, manifest: archive.manifest, isDry: job.isDry, report };
    context.out(values.json === true ? `${JSON.stringify(mergeJson(told))}\n` : mergeText(told));
    return report.conflicts.length > 0 ? 1 : 0;
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    context.err('ebbline: interrupted; nothing was taken in\n');
    return 130;
  } finally {
    archive.close();
  }
}

/** What is no ZIP file at all is more often another file than a damaged one. */
function refuseOther(path: string): void {
  const head = headOf(path);
  const kind = head === null ? 'archive' : fileKind(head);
  if (kind !== 'archive') throw otherFile(path, kind, 'an archive of `ebbline export`');
}

interface Job {
  readonly driver: string | null;
  readonly isDry: boolean;
  readonly context: CommandContext;
  readonly around: Omit<Surroundings, 'nowUtcMs'>;
}

async function takeIn(
  archive: Archive,
  { driver, isDry, context, around }: Job,
): Promise<MergeTally> {
  const { dataDir } = context;
  const existing = openExistingHistory(dataDir);
  let begun: HistoryStore | null = null;
  let staged: StagedFiles | null = null;
  try {
    if (existing !== null && existing.notice !== null) context.err(`ebbline: ${existing.notice}\n`);
    const tally = new MergeTally();
    const here = await filesHere(dataDir);
    await countedJob(archive.manifest.counts, around, async (repDone) => {
      const options = { driver, unnamed: LOCAL_DRIVER, repDone };
      if (isDry) {
        await filesToTakeIn(await tryArchive(archive, existing, tally, options), here, tally);
        return;
      }
      const place = {
        dataDir,
        existing,
        open: () => {
          begun = existing ?? openHistory(dataDir);
          return begun;
        },
      };
      const stageFiles = async (files: readonly ArchivedFile[]): Promise<void> => {
        staged = new StagedFiles(await filesToTakeIn(files, here, tally), dataDir);
      };
      await takeInArchive(archive, place, tally, options, stageFiles);
    });
    (staged as StagedFiles | null)?.putInPlace();
    return tally;
  } finally {
    (staged as StagedFiles | null)?.remove();
    (begun as HistoryStore | null)?.close();
    existing?.close();
  }
}
