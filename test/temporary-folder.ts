import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** A new empty folder, gone after the last test of the file (or of the block in which it was asked for). */
export function temporaryFolder(name: string): string {
  const folder = mkdtempSync(join(tmpdir(), `ebbline-${name}-`));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
