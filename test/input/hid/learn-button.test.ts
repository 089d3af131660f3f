import { describe, expect, test } from 'vitest';
import type { ControlRecording } from '../../../src/input/hid/control-recording.ts';
import { learnButton } from '../../../src/input/hid/learn-button.ts';
import {
  PRESSES_S,
  record,
  type SimulatedDevice,
  STILL,
  seededRandom,
  threePresses,
  twoSweeps,
} from './simulated-device.ts';
import {
  at,
  brake,
  checksum,
  constant,
  counter,
  EXAMPLE_SEED,
  unnumbered,
  wheel,
} from './simulated-layouts.ts';

const bit = (bitOffset: number, pressed: 0 | 1 = 1) =>
  at([bitOffset, 1], (m) => (m.paddle ? pressed : 1 - pressed));

function recordPaddle(device: SimulatedDevice, jog: number = 0): ControlRecording {
  const random = seededRandom(EXAMPLE_SEED);
  const rest = record(device, () => STILL, 2, random, 0);
  const pull = (t: number): { paddle: boolean; steering: number } => ({
    paddle: threePresses(t) > 0.5,
    steering: jog * threePresses(1.15 * t),
  });
  const moved = record(device, pull, PRESSES_S, random, 1003);
  const braked = record(device, (t) => ({ brake: threePresses(t) }), PRESSES_S, random, 4001);
  const steered = record(device, (t) => ({ steering: twoSweeps(t) }), 5.2, random, 9001);
  return { rest, moved, others: [braked, steered], numbered: null, fields: null };
}

const WHEEL = [counter([0, 8]), wheel([8, 16], 2), brake([24, 12], 0, 4095, 1), checksum([56, 8])];

describe('finds the paddle', () => {
  test.each([36, 37, 43, 55])('bit %i, between a counter, axes and a checksum', (bitOffset) => {
    const device = unnumbered(8, [...WHEEL.slice(0, 3), bit(bitOffset), WHEEL[3]!]);
    expect(learnButton(recordPaddle(device))).toEqual({
      kind: 'button',
      field: { reportId: 0, bitOffset, bitSize: 1, signed: false },
      pressedCounts: 1,
    });
  });
  test('while the wheel is jogged', () => {
    const device = unnumbered(8, [...WHEEL.slice(0, 3), bit(40), WHEEL[3]!]);
    expect(learnButton(recordPaddle(device, 0.1))).toMatchObject({ field: { bitOffset: 40 } });
  });
  test('while a wheel is jogged that was never recorded on its own', () => {
    const device = unnumbered(8, [wheel([8, 16]), bit(40)]);
    const recording = { ...recordPaddle(device, 0.1), others: [] };
    expect(learnButton(recording)).toMatchObject({ field: { bitOffset: 40 } });
  });
  test('beside a bit that other controls switch as well', () => {
    const shared = at([41, 1], (m) => Number(m.paddle || m.brake > 0.5));
    const device = unnumbered(8, [...WHEEL, bit(40), shared]);
    expect(learnButton(recordPaddle(device))).toMatchObject({ field: { bitOffset: 40 } });
  });
  test('that reads 0 when pulled', () => {
    const device = unnumbered(8, [...WHEEL, bit(40, 0)]);
    expect(learnButton(recordPaddle(device))).toMatchObject({ pressedCounts: 0 });
  });
  test('beside a hat at rest in the first byte, which could be taken for a report id', () => {
    const device = unnumbered(4, [constant([0, 4], 8), bit(5), brake([8, 16])]);
    expect(learnButton(recordPaddle(device))).toMatchObject({
      field: { reportId: 0, bitOffset: 5 },
    });
  });
  test('in one of two report kinds', () => {
    const device: SimulatedDevice = {
      rateHz: 250,
      bytes: { 1: 4, 2: 4 },
      fields: [
        { ...wheel([0, 16], 2), reportId: 1 },
        { ...bit(17), reportId: 2 },
      ],
    };
    expect(learnButton(recordPaddle(device))).toMatchObject({
      field: { reportId: 2, bitOffset: 17 },
    });
  });
  test('of a device that reports on change only', () => {
    const device = { ...unnumbered(3, [bit(12)]), onChangeOnly: true };
    expect(learnButton({ ...recordPaddle(device), rest: [] })).toMatchObject({
      field: { bitOffset: 12 },
      pressedCounts: 1,
    });
  });
  test('of a device that says nothing until it is pressed, by one press', () => {
    const device = { ...unnumbered(3, [bit(12)]), onChangeOnly: true };
    const [, press, release] = recordPaddle(device).moved;
    for (const others of [[], recordPaddle(device).others.slice(0, 1)])
      expect(
        learnButton({ ...recordPaddle(device), rest: [], moved: [press!, release!], others }),
      ).toMatchObject({ field: { bitOffset: 12 }, pressedCounts: 1 });
  });
  test('among the one-bit fields of a descriptor', () => {
    const device = unnumbered(8, [...WHEEL.slice(0, 3), bit(40), bit(41), WHEEL[3]!]);
    const fields = [41, 42].map((bitOffset) => ({
      reportId: 0,
      bitOffset,
      bitSize: 1,
      signed: false,
    }));
    expect(learnButton({ ...recordPaddle(device), fields })).toMatchObject({
      field: { bitOffset: 41 },
    });
  });
});

describe('refuses', () => {
  const reasonOf = (device: SimulatedDevice): string => {
    const result = learnButton(recordPaddle(device));
    return result.kind === 'refused' ? result.reason : expect.unreachable('learned something');
  };
  test('an empty recording', () => {
    const recording = recordPaddle(unnumbered(3, [bit(12)]));
    expect(learnButton({ ...recording, moved: [] })).toMatchObject({ reason: 'no-reports' });
  });
  test('nothing pressed', () => expect(reasonOf(unnumbered(8, WHEEL))).toBe('nothing-moved'));
  test('two at once', () =>
    expect(reasonOf(unnumbered(8, [...WHEEL, bit(40), bit(47)]))).toBe('several-moved'));
  test('a hat', () =>
    expect(reasonOf(unnumbered(8, [...WHEEL, at([40, 4], (m) => (m.paddle ? 2 : 15))]))).toBe(
      'several-moved',
    ));
  test('a button that is down at the end', () => {
    const button = at([12, 1], (m) => Number(m.paddle || m.timeS > 5.1));
    const recording = recordPaddle(unnumbered(3, [button]));
    expect(learnButton({ ...recording, rest: [], others: [] }).kind).toBe('refused');
    expect(
      learnButton({ ...recording, rest: [], others: [], moved: recording.moved.slice(-400) }).kind,
    ).toBe('refused');
    expect(
      learnButton({ ...recording, rest: [], others: [], moved: recording.moved.slice(0, -40) })
        .kind,
    ).toBe('button');
  });
});
