import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { bareNode, type Spawned, spawnedEbbline } from './spawned.ts';
import { yearsOfReps } from './years-of-reps.ts';

/*
 * Small commands of the built program (`npm run build`) as a user starts them, against Node that starts and ends: what
 * comes on top of it is meant to be 40 ms at most. Printed at the end are the least time on the clock and the least time
 * that processors worked, which says more where a machine is busy.
 */
const ROUNDS = { iterations: 15, time: 0, warmupIterations: 2, warmupTime: 0 };
const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-startup-'));
const FLOOR = 'bare node';
const least = new Map<string, { readonly wallMs: number; readonly cpuMs: number }>();

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
  const floor = least.get(FLOOR);
  if (floor === undefined) return;
  for (const [name, { wallMs, cpuMs }] of least) {
    const wall = `${wallMs.toFixed(0)} ms (${(wallMs - floor.wallMs).toFixed(0)} more, ${(wallMs / floor.wallMs).toFixed(2)} times)`;
    const work = `${cpuMs.toFixed(0)} ms of work (${(cpuMs - floor.cpuMs).toFixed(0)} more, ${(cpuMs / floor.cpuMs).toFixed(2)} times)`;
    process.stdout.write(`${name}: ${wall}, ${work}\n`);
  }
});

function measured(name: string, run: () => Spawned): void {
  const round = (): void => {
    // code that was kept by this command line, and not by another or by another build of the program
    process.env.XDG_CACHE_HOME = join(folder, `cache of ${name}`);
    const from = performance.now();
    const { cpuMs } = run();
    const wallMs = performance.now() - from;
    const before = least.get(name) ?? { wallMs, cpuMs };
    least.set(name, {
      wallMs: Math.min(before.wallMs, wallMs),
      cpuMs: Math.min(before.cpuMs, cpuMs),
    });
  };
  bench(name, round, ROUNDS);
}

describe('start-up, the whole command', () => {
  measured(FLOOR, bareNode);
  const empty = mkdtempSync(join(folder, 'empty-'));
  for (const line of ['--version', '--help', 'target list'])
    measured(line, () => spawnedEbbline(...line.split(' '), '--data-dir', empty));
  for (const reps of [50, 1000]) {
    const own = mkdtempSync(join(folder, `${reps}-`));
    yearsOfReps(own, reps, 'few');
    measured(`progress --json, ${reps} reps`, () =>
      spawnedEbbline('progress', '--json', '--data-dir', own),
    );
  }
});
