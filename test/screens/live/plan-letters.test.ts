import { expect, test } from 'vitest';
import { planLegend } from '../../../src/screens/live/plan-letters.ts';
import { PLAN } from './sample-live.ts';

test('every letter of a plan is explained once, capitals for the own and small ones for the target', () => {
  expect(planLegend(PLAN)).toEqual([
    "B brake point, b target's",
    "R start of release, r target's",
    'D downshift',
    'T turn-in',
    'S slowest',
    'o bump',
    'L lock-up',
  ]);
});

test('what the rep never got to is left out', () => {
  const marks = PLAN.marks.filter(({ kind }) => !['start of release', 'bump'].includes(kind));
  expect(planLegend({ ...PLAN, marks })).toContain("r target's start of release");
  expect(planLegend({ ...PLAN, marks })).not.toContain('o bump');
  expect(planLegend({ ...PLAN, marks: [{ sM: 0, kind: 'brake point' }] })).toEqual([
    'B brake point',
  ]);
});
