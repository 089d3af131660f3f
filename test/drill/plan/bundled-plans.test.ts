import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planWarnings } from '../../../src/drill/plan/plan-warnings.ts';
import type { PracticePlan } from '../../../src/drill/plan/practice-plan.ts';
import { readPlan } from '../../profile/read-sound.ts';

const FOLDER = new URL('../../../profiles/plans/', import.meta.url);
const files = readdirSync(FOLDER);
const text = (file: string): string => readFileSync(new URL(file, FOLDER), 'utf8');
const load = (file: string): PracticePlan => readPlan(text(file), file);

test('there is one for each need', () => {
  expect(files).toEqual([
    'after-a-break.yaml',
    'before-test-day.yaml',
    'late-stint.yaml',
    'long-pedal.yaml',
    'maintenance.yaml',
    'new-corner.yaml',
  ]);
});

test('together they use every kind of order, feedback, zone and check', () => {
  const plans = files.map(load);
  const all = <T>(pick: (plan: PracticePlan) => readonly T[]): Set<T> =>
    new Set(plans.flatMap(pick));
  expect(all(({ blocks }) => blocks.map(({ order }) => order)).size).toBe(3);
  expect(all(({ feedback }) => [feedback.kind]).size).toBe(2);
  expect(all(({ zones }) => zones.map(({ kind }) => kind)).size).toBe(2);
  expect(plans.some(({ carryOver }) => carryOver !== null)).toBe(true);
  expect(plans.some(({ promotion }) => promotion !== null)).toBe(true);
  expect(plans.some(({ condition }) => condition !== null)).toBe(true);
});

describe.each(files)('%s', (file) => {
  test('names its schema, and says what it is for', () => {
    const [first, second, third] = text(file).split('\n');
    expect(first).toBe('# yaml-language-server: $schema=../schema/plan.schema.json');
    expect(second).toBe('#');
    expect(third).toMatch(/^# \w/);
    expect(load(file).advice).not.toBeNull();
  });

  test('says nothing that is hardly meant', () => {
    expect(planWarnings(load(file))).toEqual([]);
  });
});
