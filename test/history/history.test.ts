import { expect, test } from 'vitest';
import { historyContract } from './history.contract.ts';
import { JOURNAL, SQL_IMPLEMENTATIONS } from './implementations.ts';

test('SQLite is there to be tested: built in from Node 22.13, the optional package on Node 20', () => {
  const [major = 0] = process.versions.node.split('.').map(Number);
  expect(SQL_IMPLEMENTATIONS.map(({ name }) => name)).toContain(
    major >= 22 ? 'node:sqlite' : 'better-sqlite3',
  );
});

for (const implementation of [...SQL_IMPLEMENTATIONS, JOURNAL]) historyContract(implementation);
