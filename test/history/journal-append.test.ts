import { readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { aPractice, aRep } from './fixtures.ts';
import { inFolder } from './implementations.ts';

/** What another program does at the worst moment: after the line is written, before it is known to be kept. */
let atSync: () => void = () => {};

vi.mock('node:fs', async (original) => {
  const fs = await original<typeof import('node:fs')>();
  return {
    ...fs,
    fsyncSync: (fd: number) => {
      fs.fsyncSync(fd);
      const once = atSync;
      atSync = () => {};
      once();
    },
  };
});

test('a line whose file was renamed while it was written is written again, with its practice', () =>
  inFolder((folder) => {
    const file = join(folder, 'history.jsonl');
    const history = openHistory(folder, { drivers: [] });
    const practice = history.startPractice(aPractice());
    atSync = () => renameSync(file, `${file}.imported`);
    history.addRep(practice, aRep());
    history.close();
    const kinds = (name: string): string[] =>
      readFileSync(name, 'utf8')
        .split('\n')
        .flatMap((line) => (line === '' ? [] : JSON.parse(line).entry))
        .map(({ kind, origin }) => `${kind} ${origin}`);
    expect(kinds(file)).toEqual(kinds(`${file}.imported`));
    expect(kinds(file)).toEqual([expect.stringMatching('practice'), expect.stringMatching('rep')]);
  }));
