import { expect, test } from 'vitest';
import { problemOfFile } from '../../src/profile/profile-problem.ts';

test('one problem of a file points at its place', () => {
  const problem = problemOfFile('a.yaml', [{ line: 3, column: 9, what: 'x is 4', next: 'Use 1.' }]);
  expect(problem).toMatchObject({ message: 'x is 4', where: 'a.yaml:3:9', next: 'Use 1.' });
  expect(problem.exitCode).toBe(1);
});

test('several are listed from the top of the file down', () => {
  const problem = problemOfFile('a.yaml', [
    { line: 10, column: 1, what: 'y is 5', next: 'Use 2.' },
    { line: 3, column: 9, what: 'x is 4', next: 'Use 1.' },
    { line: 3, column: 2, what: 'w is 3', next: 'Use 0.' },
  ]);
  expect(problem.where).toBe('a.yaml');
  expect(problem.message.split('\n')).toEqual([
    '3 problems',
    '  a.yaml:3:2: w is 3. Use 0.',
    '  a.yaml:3:9: x is 4. Use 1.',
    '  a.yaml:10:1: y is 5. Use 2.',
  ]);
});
