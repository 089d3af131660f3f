import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readCornerSheet } from '../../src/corner/read-corner-sheet.ts';
import { readTarget } from '../../src/target/read-target.ts';
import { readEvent, readPlan } from '../profile/read-sound.ts';

const README = readFileSync(new URL('../../profiles/README.md', import.meta.url), 'utf8');
const examples = [...README.matchAll(/```yaml\n([\s\S]*?)```/g)].map((match) => match[1]!);
const targets = examples.filter((text) => /^domain:/m.test(text));
const corners = examples.filter((text) => /^line:/m.test(text));
const events = examples.filter((text) => /^sessions:/m.test(text));
const plans = examples.filter((text) => /^blocks:/m.test(text));

test('every example is a target, a corner, a plan or an event', () => {
  const known = targets.length + corners.length + plans.length + events.length;
  expect(known).toBe(examples.length);
});

test('the examples of profiles/README.md over time and over distance are targets', () => {
  expect(targets.map((text) => readTarget(text, 'my-corner.yaml').domain)).toEqual([
    'time',
    'distance',
  ]);
});

test('the example of a corner sheet is one', () => {
  expect(corners.map((text) => readCornerSheet(text, 'my-corner.yaml').line.kind)).toEqual([
    'smooth-apex',
  ]);
});

test('the example of a plan is one', () => {
  expect(plans.map((text) => readPlan(text, 'my-plan.yaml').blocks.length)).toEqual([3]);
});

test('the example of an event is one', () => {
  expect(events.map((text) => readEvent(text, 'my-event.yaml').zones.length)).toEqual([3]);
});
