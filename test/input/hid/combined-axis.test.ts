import { describe, expect, test } from 'vitest';
import { combinedAxis, type LearnedMovement } from '../../../src/input/hid/combined-axis.ts';
import { learnAxis } from '../../../src/input/hid/learn-axis.ts';
import {
  type Action,
  PRESSES_S,
  record,
  type SimulatedDevice,
  STILL,
  seededRandom,
  threePresses,
} from './simulated-device.ts';
import { at, brake, counter, EXAMPLE_SEED, throttle, unnumbered } from './simulated-layouts.ts';

const press: Action = (t) => ({ brake: threePresses(t) });
const pressThrottle: Action = (t) => ({ throttle: threePresses(1.05 * t) });

function learnBoth(
  device: SimulatedDevice,
  actions: [Action, Action] = [press, pressThrottle],
): ReturnType<typeof combinedAxis> {
  const random = seededRandom(EXAMPLE_SEED);
  const rest = record(device, () => STILL, 2, random, 0);
  const [first, second] = actions.map((action, i): LearnedMovement => {
    const moved = record(device, action, PRESSES_S, random, 1000 + 2000 * i);
    const axis = learnAxis({ rest, moved, others: [], numbered: null, fields: null });
    return axis.kind === 'axis' ? { axis, moved } : expect.unreachable(axis.reason);
  });
  return combinedAxis(first!, second!, rest);
}

const difference = (scale: number) => (m: { brake: number; throttle: number }) =>
  Math.round(scale * (m.brake - m.throttle));

describe('two pedals on one axis', () => {
  test('8 bits unsigned, resting at 128', () => {
    const device = unnumbered(3, [counter([0, 8]), at([8, 8], (m) => 128 + difference(127)(m))]);
    expect(learnBoth(device)).toEqual({
      kind: 'combined',
      field: { reportId: 0, bitOffset: 8, bitSize: 8, signed: false },
      restCounts: 128,
      firstFullCounts: 255,
      secondFullCounts: 1,
    });
  });
  test('16 bits signed, resting at 0, the first one downwards', () => {
    const device = unnumbered(4, [at([16, 16], (m) => -difference(32767)(m))]);
    expect(learnBoth(device)).toMatchObject({
      field: { bitOffset: 16, bitSize: 16, signed: true },
      restCounts: 0,
      firstFullCounts: -32767,
      secondFullCounts: 32767,
    });
  });
  test('10 bits at bit 5', () => {
    const device = unnumbered(4, [at([5, 10], (m) => 512 + difference(500)(m))]);
    expect(learnBoth(device)).toMatchObject({
      field: { bitOffset: 5, bitSize: 10, signed: false },
      firstFullCounts: 1012,
      secondFullCounts: 12,
    });
  });
});

test('two pedals with a field each are not combined', () =>
  expect(learnBoth(unnumbered(4, [brake([0, 16]), throttle([16, 16])]))).toBeNull());

test('not even where both fit into sixteen bits', () =>
  expect(learnBoth(unnumbered(4, [brake([0, 8]), throttle([8, 8])]))).toBeNull());

test('the same pedal pressed twice is refused', () =>
  expect(learnBoth(unnumbered(4, [brake([0, 16])]), [press, press])).toMatchObject({
    kind: 'refused',
    reason: 'same-control',
  }));
