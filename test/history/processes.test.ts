import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { openDatabase } from '../../src/history/sql/open-database.ts';
import { compileSource } from './compile-source.ts';
import { type Implementation, inFolder, JOURNAL, SQL_IMPLEMENTATIONS } from './implementations.ts';
import { uniform } from './rep-signals.ts';

const ALL = [...SQL_IMPLEMENTATIONS, JOURNAL];
const WISH = process.env.EBBLINE_TEST_SEED ?? '20261125';
const SEED = WISH === 'random' ? Date.now() % 1e9 : Number(WISH);
const LONG_MS = 120_000;

let compiled = '';
beforeAll(() => {
  compiled = compileSource();
}, LONG_MS);
afterAll(() => rmSync(compiled, { recursive: true, force: true }));

const child = (name: string): string => new URL(`children/${name}.mjs`, import.meta.url).pathname;

interface Finished {
  readonly numbers: readonly number[];
  readonly errors: string;
  readonly signal: NodeJS.Signals | null;
  readonly code: number | null;
}

/** Starts a writer; `watch` sees it after every number it prints. */
function write(
  folder: string,
  { name }: Implementation,
  driver: string,
  count: number,
  watch: (process: ChildProcess, numbers: number) => void = () => {},
): Promise<Finished> {
  const args = [child('write-reps'), compiled, folder, name, driver, String(count)];
  const writer = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  let [out, errors] = ['', ''];
  // a number counts as printed with its line feed; a kill may cut the last one
  const numbers = (): number[] => out.split('\n').slice(0, -1).map(Number);
  writer.stdout.on('data', (chunk) => {
    out += chunk;
    watch(writer, numbers().length);
  });
  writer.stderr.on('data', (chunk) => {
    errors += chunk;
  });
  return new Promise((resolve) => {
    writer.on('close', (code, signal) => resolve({ numbers: numbers(), errors, signal, code }));
  });
}

/** The numbers of the reps of a driver; every one is read with its samples. */
function kept(folder: string, { drivers }: Implementation, driver: string): number[] {
  const history = openHistory(folder, { drivers });
  const numbers = [...history.reps({ driver })].map(({ id, number, outcomes }) => {
    expect(history.record(id).brake.timeS.length).toBe(4000);
    expect(outcomes).toHaveLength(1);
    return number;
  });
  history.close();
  return numbers;
}

test.each(ALL)(
  'kill -9 at any moment loses no rep that was reported: $name',
  (implementation) =>
    inFolder(async (folder) => {
      const random = uniform(SEED);
      let reported = 0;
      for (let round = 0; round < 5; round++) {
        const driver = `driver ${round}`;
        const first = 1 + Math.floor(random() * 6);
        const delayMs = random() * 30;
        const { numbers, errors, signal } = await write(
          folder,
          implementation,
          driver,
          1e6,
          (writer, printed) => {
            if (printed >= first) setTimeout(() => writer.kill('SIGKILL'), delayMs);
          },
        );
        expect([errors, signal]).toEqual(['', 'SIGKILL']);
        expect(numbers.length).toBeGreaterThanOrEqual(first);
        reported += numbers.length;
        const found = kept(folder, implementation, driver);
        // at most one more was finished and could not be reported any more
        expect(found.slice(0, numbers.length), `seed ${SEED}`).toEqual(numbers);
        expect(found.length - numbers.length, `seed ${SEED}`).toBeLessThanOrEqual(1);
      }
      console.log(`${implementation.name}: ${reported} reps in 5 killed programs, seed ${SEED}`);
      expectSound(folder, implementation);
    }),
  LONG_MS,
);

test.each(ALL)(
  'two programs that start and write at the same time: $name',
  (implementation) =>
    inFolder(async (folder) => {
      const drivers = ['one', 'two'];
      const runs = await Promise.all(
        drivers.map((driver) => write(folder, implementation, driver, 30)),
      );
      const all = Array.from({ length: 30 }, (_, i) => i + 1);
      for (const { numbers, errors, code } of runs)
        expect({ numbers, errors, code }).toEqual({ numbers: all, errors: '', code: 0 });
      for (const driver of drivers) expect(kept(folder, implementation, driver)).toEqual(all);
      expectSound(folder, implementation);
    }),
  LONG_MS,
);

test.each(SQL_IMPLEMENTATIONS)(
  'a journal is written while programs with $name start and import it',
  (implementation) =>
    inFolder(async (folder) => {
      let isDone = false;
      const written = write(folder, JOURNAL, 'one', 60).finally(() => {
        isDone = true;
      });
      while (!isDone) {
        openHistory(folder, { drivers: implementation.drivers }).close();
        await new Promise((resolve) => setTimeout(resolve, 3));
      }
      const { numbers, errors } = await written;
      expect([numbers.length, errors]).toEqual([60, '']);
      expect(kept(folder, implementation, 'one')).toEqual(numbers);
      const names = readdirSync(folder).filter((name) => name.endsWith('.imported'));
      console.log(`${names.length} imports of one journal in writing`);
      expect(names.length).toBeGreaterThan(1);
    }),
  LONG_MS,
);

/** Root may write anywhere, so it steps down to a user who owns nothing. */
const UNPRIVILEGED = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};

const CAN_STEP_DOWN =
  process.platform !== 'win32' &&
  spawnSync(process.execPath, ['--version'], UNPRIVILEGED).status === 0;

test.skipIf(!CAN_STEP_DOWN)('a folder that is read-only is a problem', () =>
  inFolder((parent) => {
    chmodSync(parent, 0o755);
    const folder = join(parent, 'data');
    mkdirSync(folder);
    chmodSync(folder, 0o555);
    for (const place of [folder, join(folder, 'deeper')]) {
      const args = [child('open-history'), compiled, place];
      const out = execFileSync(process.execPath, args, { ...UNPRIVILEGED, encoding: 'utf8' });
      expect(JSON.parse(out).problem).toEqual({
        name: 'Problem',
        message: expect.stringMatching(/cannot be (opened|written)|no right to write/),
        where: expect.stringContaining(place),
        next: expect.stringContaining('--data-dir'),
      });
    }
    expect(readdirSync(folder)).toEqual([]);
    chmodSync(folder, 0o755);
  }),
);

function expectSound(folder: string, { drivers }: Implementation): void {
  const driver = drivers[0]?.();
  if (driver === undefined || !('open' in driver)) return;
  const db = openDatabase(driver, join(folder, 'history.sqlite'));
  expect(db.all('PRAGMA integrity_check')).toMatchObject([{ integrity_check: 'ok' }]);
  expect(db.all('PRAGMA foreign_key_check')).toEqual([]);
  db.close();
}
