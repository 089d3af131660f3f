import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { traceImport } from '../../src/commands/trace-import.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { csvOf, drive } from '../trace/log/driven-log.ts';
import { fakeContext } from './fake-context.ts';

const folder = temporaryFolder('trace-import');
const LOG = join(folder, 'friday.csv');
writeFileSync(LOG, csvOf(drive()));
const traces = (): string[] => readdirSync(join(folder, 'traces'));

const importing = async (asked: boolean, isTerminal = true) => {
  let drawn = '';
  const output = {
    write: (text: string) => {
      drawn += text;
    },
    isTerminal,
    columns: 80,
    nowMs: () => 0,
  };
  const context = fakeContext(folder);
  const input = { positionals: [LOG], values: {} };
  const code = await traceImport(input, context, { output, stop: { asked } });
  return { code, drawn, out: context.printed(), err: context.warned() };
};

test('an import that is stopped leaves nothing, and what was kept before; the next one is whole', async () => {
  const stopped = await importing(true);
  expect(stopped).toMatchObject({ code: 130, out: '' });
  expect(stopped.err).toContain('interrupted; nothing of');
  expect(traces()).toEqual([]);
  expect((await importing(false)).out).toContain('trace friday: 3 braking zones');
  const kept = readFileSync(join(folder, 'traces', 'friday.jsonl'));
  expect((await importing(true)).code).toBe(130);
  expect(traces()).toEqual(['friday.jsonl']);
  expect(readFileSync(join(folder, 'traces', 'friday.jsonl'))).toEqual(kept);
});

test('says how far it is on a terminal, takes that away again, and is quiet elsewhere', async () => {
  const { drawn } = await importing(false);
  // The log is smaller than a megabyte.
  expect(drawn).toBe('\r\u001b[K0 of 1 MB\r\u001b[K');
  expect((await importing(false, false)).drawn).toBe('');
});
