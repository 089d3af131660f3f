import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openHistory } from '../../src/history/open-history.ts';
import type { HistoryStore } from '../../src/history/store.ts';

const MAIN = new URL('../../dist/bin/ebbline.js', import.meta.url).pathname;

/** Text that is markup to whoever does not escape it. */
export const HOSTILE =
  '<script>alert(1)</script><img src=x onerror=alert(2)>"\'</style>]]>-->&lt;\u05d0\u05d1';

/** As long as the name of a target may be. */
const NAME = `<script>alert(1)</script>"']]>--`;

/** Pages of invented histories as the program writes them. */
export interface MadePages {
  readonly folder: string;
  /** The last practice of five invented weeks. */
  readonly practice: string;
  readonly weeks: string;
  /** A block with the live car. */
  readonly live: string;
  /** A practice of which every word from outside is hostile. */
  readonly hostile: string;
  /** Folder with the pictures of the hostile practice. */
  readonly pictures: string;
}

export function makePages(): MadePages {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-pages-'));
  const weeks = join(folder, 'weeks');
  run('virtual', 'history', '--weeks', '5', '--seed', '2', '--data-dir', weeks);
  const car = join(folder, 'car');
  const drill = [
    'drill',
    'kiln-hairpin',
    '--car',
    'gt',
    '--variant',
    'race',
    '--source',
    'virtual:club',
  ];
  run(...drill, '--headless', '--seed', '1', '--reps', '5', '--data-dir', car);
  makeHostile(weeks);
  const page = (name: string, data: string, ...which: string[]): string => {
    const path = join(folder, name);
    run('report', ...which, '--out', path, '--data-dir', data);
    return path;
  };
  const pictures = join(folder, 'pictures');
  const own = lastPracticeBut(1, weeks);
  return {
    folder,
    practice: page('practice.html', weeks, String(own)),
    weeks: page('weeks.html', weeks, '--weeks', '5200', 'hairpin'),
    live: page('live.html', car, 'last'),
    hostile: page('hostile.html', weeks, 'last', '--svg', pictures),
    pictures,
  };
}

function run(...argv: string[]): void {
  const { status, stderr } = spawnSync(process.execPath, [MAIN, ...argv], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${argv.join(' ')}: ${stderr}`);
}

function lastPracticeBut(newest: number, dataDir: string): number {
  const history = openHistory(dataDir);
  const id = history.practices().at(-1 - newest)!.id;
  history.close();
  return id;
}

/** The last practice once more, by a driver, in shoes and on a target with hostile names, and with a note. */
function makeHostile(dataDir: string): void {
  const plain = readFileSync(
    new URL('../../profiles/targets/hairpin.yaml', import.meta.url),
    'utf8',
  );
  const named = plain.replace(/^name:.*$/m, `name: ${JSON.stringify(NAME)}`);
  if (named === plain) throw new Error('the target has no name');
  mkdirSync(join(dataDir, 'targets'));
  writeFileSync(join(dataDir, 'targets', 'sharp.yaml'), named);
  const history = openHistory(dataDir);
  copyPractice(history);
  history.close();
}

function copyPractice(history: HistoryStore): void {
  const last = history.practices().at(-1)!;
  const reps = [...history.reps({ practiceId: last.id })];
  const later = 3_600_000;
  const at = { ...last.startedAt, utcMs: last.startedAt.utcMs + later };
  const practiceId = history.startPractice({
    ...last,
    startedAt: at,
    driver: HOSTILE,
    footwear: HOSTILE,
    calibrationId: HOSTILE,
  });
  for (const rep of reps) {
    const repId = history.addRep(practiceId, {
      ...rep,
      targetId: 'sharp',
      condition: HOSTILE,
      selfRating: HOSTILE,
      record: history.record(rep.id),
      outcome: rep.outcomes.at(-1) ?? null,
    });
    if (rep.number === 1)
      history.addNote({
        at,
        driver: HOSTILE,
        text: HOSTILE,
        car: HOSTILE,
        corner: HOSTILE,
        variant: HOSTILE,
        gear: 2,
        repId,
      });
  }
}
