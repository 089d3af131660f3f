import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync } from 'node:fs';
import { join } from 'node:path';

const ROOT = new URL('../..', import.meta.url).pathname;

/**
 * Compiles src/ as it is now for tests that need a process of its own, without checking types.
 * @returns the new folder, below the project so that packages are found; the caller removes it.
 */
export function compileSource(): string {
  mkdirSync(join(ROOT, '.cache'), { recursive: true });
  const outDir = mkdtempSync(join(ROOT, '.cache', 'compiled-'));
  chmodSync(outDir, 0o755); // other users may run it too
  const tsc = join(ROOT, 'node_modules', 'typescript', 'bin', 'tsc');
  const options = ['--outDir', outDir, '--noCheck', '--incremental', 'false'];
  execFileSync(process.execPath, [tsc, '-p', join(ROOT, 'src'), ...options]);
  return outDir;
}
