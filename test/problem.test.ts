import { expect, test } from 'vitest';
import { describeProblem, Problem } from '../src/problem.ts';

test('a problem says where, what and what to do next', () => {
  const problem = new Problem('level 1.4 is above 1', {
    where: 'hairpin.yaml:7:12',
    next: 'Use a level from 0 to 1.',
  });
  expect(describeProblem(problem)).toBe(
    'hairpin.yaml:7:12: level 1.4 is above 1\n  Use a level from 0 to 1.',
  );
  expect(problem.exitCode).toBe(1);
});
