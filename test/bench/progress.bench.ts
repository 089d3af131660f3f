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
 * Memory is that of the process at its peak, printed at the end. A history with five seconds of samples in every rep
 * takes no more than one with a few samples each.
 */
const ROUNDS = { iterations: 10, time: 0, warmupIterations: 1, warmupTime: 0 };
const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-progress-'));
const peaks = new Map<string, number>();
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
  const floor = peaks.get('bare node') ?? Number.NaN;
  for (const [name, mib] of peaks)
    process.stdout.write(
      `peak memory, ${name}: ${mib.toFixed(0)} MiB, ${(mib / floor).toFixed(2)} times bare node\n`,
    );
});

function measured(name: string, run: () => Spawned): void {
  bench(
    name,
    () => {
      const { peakMib } = run();
      peaks.set(name, Math.max(peaks.get(name) ?? 0, peakMib));
    },
    ROUNDS,
  );
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
