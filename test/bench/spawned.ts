import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const USAGE = fileURLToPath(new URL('process-usage.cjs', import.meta.url));
const MAIN = fileURLToPath(new URL('../../dist/bin/ebbline.js', import.meta.url));

/** What a process printed, the most memory it had, and the time that processors worked for it. */
export interface Spawned {
  readonly printed: string;
  readonly peakMib: number;
  readonly cpuMs: number;
}

/** Runs Node to its end. @throws Error where it fails */
export function spawnedNode(...args: readonly string[]): Spawned {
  const { status, output } = spawnSync(process.execPath, ['--require', USAGE, ...args], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
    maxBuffer: 2 ** 28,
  });
  if (status !== 0) throw new Error(output[2] ?? 'it did not start');
  const { peakKib, cpuUs } = JSON.parse(output[3] ?? '');
  return { printed: output[1] ?? '', peakMib: peakKib / 1024, cpuMs: cpuUs / 1000 };
}

/** The floor: Node that starts and ends. */
export function bareNode(): Spawned {
  return spawnedNode('--eval', '0');
}

/** The built program as a user starts it. */
export function spawnedEbbline(...args: readonly string[]): Spawned {
  return spawnedNode(MAIN, ...args);
}
