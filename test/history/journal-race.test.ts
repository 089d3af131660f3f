import { existsSync, readdirSync, type renameSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import type { HistoryStore } from '../../src/history/store.ts';
import { aPractice, aRep } from './fixtures.ts';
import { inFolder, SQL_IMPLEMENTATIONS } from './implementations.ts';

/** What another program does in the moment before a file is renamed. */
let beforeRenaming: (from: string) => void = () => {};

vi.mock('node:fs', async (original) => {
  const fs = await original<typeof import('node:fs')>();
  const rename: typeof renameSync = (from, to) => {
    beforeRenaming(String(from));
    fs.renameSync(from, to);
  };
  return { ...fs, renameSync: rename };
});

beforeEach(() => {
  beforeRenaming = () => {};
});

const file = (folder: string): string => join(folder, 'history.jsonl');
const numbers = (history: HistoryStore): number[] =>
  [...history.reps({})].map(({ number }) => number);

describe.each(SQL_IMPLEMENTATIONS)('a journal that $name imports', ({ drivers }) => {
  const reopened = (folder: string): number[] => {
    const history = openHistory(folder, { drivers });
    const found = numbers(history);
    history.close();
    return found;
  };

  test('loses no rep that is written in the moment before it is renamed', () =>
    inFolder((folder) => {
      const writer = openHistory(folder, { drivers: [] });
      const practice = writer.startPractice(aPractice());
      writer.addRep(practice, aRep({ number: 1 }));
      let isLate = false;
      beforeRenaming = (from) => {
        if (from !== file(folder)) return;
        beforeRenaming = () => {};
        writer.addRep(practice, aRep({ number: 2 }));
        isLate = true;
      };
      expect(reopened(folder)).toEqual([1, 2]);
      expect(isLate).toBe(true);
      writer.addRep(practice, aRep({ number: 3 }));
      writer.close();
      expect(reopened(folder)).toEqual([1, 2, 3]);
    }));

  test('is taken in by the next start where the importing program ended half way', () =>
    inFolder((folder) => {
      const writer = openHistory(folder, { drivers: [] });
      const practice = writer.startPractice(aPractice());
      writer.addRep(practice, aRep({ number: 1 }));
      beforeRenaming = (from) => {
        if (from !== file(folder)) throw new Error('the power is gone');
        writer.addRep(practice, aRep({ number: 2 }));
      };
      expect(() => openHistory(folder, { drivers })).toThrow(/power/);
      expect(existsSync(file(folder))).toBe(false);
      beforeRenaming = () => {};
      writer.addRep(practice, aRep({ number: 3 }));
      writer.close();
      expect(reopened(folder)).toEqual([1, 2, 3]);
      expect(readdirSync(folder).filter((name) => name.endsWith('.importing'))).toEqual([]);
    }));
});
