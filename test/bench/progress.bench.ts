import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { bareNode, type Spawned, spawnedEbbline } from './spawned.ts';
import { yearsOfReps } from './years-of-reps.ts';

/*
 * Ten years of hard use are 100,000 reps; `progress` over them is meant to answer in half a second. Measured is the
 * whole command as a user starts it, on the built program (`npm run build`), against Node that starts and ends. The
 * reps are written before, and read once: whoever asks first after a practice packs its numbers.
 *
 * Printed at the end are the most memory of the process, which samples do not add to, and the least time that
 * processors worked for it, which says more than the clock where a machine is busy.
 */
const ROUNDS = { iterations: 10, time: 0, warmupIterations: 1, warmupTime: 0 };
const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-progress-'));
const usages = new Map<string, Pick<Spawned, 'peakMib' | 'cpuMs'>>();
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
  const floor = usages.get('bare node');
  if (floor === undefined) return;
  for (const [name, { peakMib, cpuMs }] of usages) {
    const memory = `${peakMib.toFixed(0)} MiB (${(peakMib / floor.peakMib).toFixed(1)} times)`;
    const work = `${cpuMs.toFixed(0)} ms of work (${(cpuMs / floor.cpuMs).toFixed(1)} times)`;
    process.stdout.write(`${name}: ${memory}, ${work}\n`);
  }
});

function measured(name: string, run: () => Spawned): void {
  const round = (): void => {
    const { peakMib, cpuMs } = run();
    const before = usages.get(name) ?? { peakMib: 0, cpuMs: Number.POSITIVE_INFINITY };
    usages.set(name, {
      peakMib: Math.max(before.peakMib, peakMib),
      cpuMs: Math.min(before.cpuMs, cpuMs),
    });
  };
  bench(name, round, ROUNDS);
}

function years(reps: number, samples: 'whole' | 'few'): string {
  const own = mkdtempSync(join(folder, `${reps}-`));
  yearsOfReps(own, reps, samples);
  const { printed } = spawnedEbbline('progress', '--data-dir', own);
  if (!printed.includes(`${reps} reps on`) || !printed.includes('hidden reps of'))
    throw new Error(`no such progress:\n${printed}`);
  return own;
}

describe('progress, the whole command', () => {
  measured('bare node', bareNode);
  for (const reps of [1000, 10_000, 100_000]) {
    const own = years(reps, 'few');
    measured(`${reps} reps`, () => spawnedEbbline('progress', '--data-dir', own));
    measured(`${reps} reps, JSON`, () => spawnedEbbline('progress', '--json', '--data-dir', own));
  }
  const whole = years(10_000, 'whole');
  measured('10000 reps with five seconds of samples each', () =>
    spawnedEbbline('progress', '--data-dir', whole),
  );
});
