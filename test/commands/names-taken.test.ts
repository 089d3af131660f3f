import { expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { runCommand } from './run-command.ts';

const dataDir = temporaryFolder('names-taken');

test.each([
  ['backup', 'kim', 'no names'],
  ['export', 'kim', 'no names'],
  ['rescore', 'kim', 'no names'],
  ['virtual history', 'kim', 'no names'],
  ['note list', 'one two', 'one corner, not 2'],
  ['import', 'one.zip two.zip', 'one archive, not 2'],
  ['report', 'one two', 'one name'],
])('%s %s is told once that it takes %s', async (command, names, taken) => {
  const words = `${command} ${names}`.split(' ');
  const { code, stderr } = await runCommand([...words, '--data-dir', dataDir]);
  expect(code).toBe(2);
  expect(stderr.split('\n')[0]).toBe(`ebbline: ${command}: it takes ${taken}`);
});
