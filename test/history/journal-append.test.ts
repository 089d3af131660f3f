import { readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { aPractice, aRep } from './fixtures.ts';
import { inFolder } from './implementations.ts';

/** What another program does at the worst moment: after the line is written, before it is known to be kept. */
let atSync: () => void = () => {};
/** The same a moment later: after the line is known to be kept, before it is read back. */
let atClose: () => void = () => {};

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
    closeSync: (fd: number) => {
      fs.closeSync(fd);
      const once = atClose;
      atClose = () => {};
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

test('practice and rep have their numbers though the file was renamed as soon as they were kept', () =>
  inFolder((folder) => {
    const file = join(folder, 'history.jsonl');
    const history = openHistory(folder, { drivers: [] });
    atClose = () => renameSync(file, `${file}.imported`);
    const practice = history.startPractice(aPractice());
    atClose = () => renameSync(file, `${file}.2.imported`);
    const rep = history.addRep(practice, aRep());
    expect([practice, rep]).toEqual([1, 1]);
    expect([...history.reps({})].map(({ id }) => id)).toEqual([1]);
    history.close();
  }));
