import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rig } from '../../../src/input/rig/rig.ts';
import { createRigDecoder } from '../../../src/input/rig/rig-decoder.ts';
import { Problem } from '../../../src/problem.ts';
import { batchOf, deviceOf, identity, word } from '../report-batches.ts';
import { calibration, WORD } from './calibration.ts';

const PEDALS = 1;
const WHEEL = 2;
const pedals = deviceOf(PEDALS, 'test pedals');
const wheel = deviceOf(WHEEL, 'test wheel');

/** Pedals: brake and throttle words. Wheel: report 1 has a steering word and a byte of buttons, report 2 is foreign. */
const RIG: Rig = {
  axes: [
    { role: 'brake', device: pedals.identity, field: WORD, calibration: calibration(0, 1000) },
    {
      role: 'throttle',
      device: pedals.identity,
      field: { ...WORD, bitOffset: 16 },
      calibration: calibration(1000, 0),
    },
    {
      role: 'steering',
      device: wheel.identity,
      field: { ...WORD, reportId: 1, signed: true },
      calibration: calibration(0, -1000),
    },
  ],
  buttons: [
    {
      device: wheel.identity,
      field: { reportId: 1, bitOffset: 17, bitSize: 1, signed: false },
      pressedCounts: 1,
      control: 'left paddle',
      action: 'downshift',
    },
    {
      device: wheel.identity,
      field: { reportId: 1, bitOffset: 16, bitSize: 1, signed: false },
      pressedCounts: 1,
      control: 'wheel button 1',
      action: null,
    },
  ],
  wheelLockDeg: 900,
  foot: 'left',
  footwear: 'race shoe',
};
const DEVICES = [wheel, pedals];
const pedalReport = (brake: number, throttle: number): number[] => [
  ...word(brake),
  ...word(throttle),
];
const wheelReport = (steering: number, buttons: number): number[] => [
  1,
  ...word(steering),
  buttons,
];

describe('decode', () => {
  test('gives each role its samples at their times', () => {
    const batch = createRigDecoder(RIG, DEVICES).decode(
      batchOf(8000, [
        [1, 1000, pedalReport(250, 1000)],
        [0, 1500, wheelReport(-200, 0)],
        [1, 2000, pedalReport(500, 750)],
        [0, 3000, wheelReport(100, 0)],
      ]),
    );
    expect([...batch.brake.timeS]).toEqual([0.001, 0.002]);
    expect([...batch.brake.value]).toEqual([0.25, 0.5]);
    expect([...batch.throttle.value]).toEqual([0, 0.25]);
    expect([...batch.steering.timeS]).toEqual([0.0015, 0.003]);
    expect([...batch.steering.value]).toEqual([90, -45]);
    expect(batch.clutch.timeS.length).toBe(0);
    expect(batch.untilS).toBe(0.008);
  });

  test('a batch keeps its samples when the next one is decoded', () => {
    const decoder = createRigDecoder(RIG, DEVICES);
    const first = decoder.decode(batchOf(8000, [[1, 1000, pedalReport(250, 1000)]]));
    const second = decoder.decode(batchOf(16000, [[1, 9000, pedalReport(750, 1000)]]));
    expect([...first.brake.value]).toEqual([0.25]);
    expect([...second.brake.value]).toEqual([0.75]);
  });

  test('holds more samples than any buffer was made for', () => {
    const reports = Array.from(
      { length: 1000 },
      (_, i) => [1, 10 * i, pedalReport(i, 1000)] as const,
    );
    const { brake } = createRigDecoder(RIG, DEVICES).decode(batchOf(10_000, reports));
    expect(brake.value.length).toBe(1000);
    expect(brake.value[5]).toBeCloseTo(0.005, 12);
    expect(brake.value[999]).toBeCloseTo(0.999, 12);
    expect(brake.timeS[999]).toBeCloseTo(0.00999, 12);
  });

  test('passes over reports of another id, short reports and unknown devices', () => {
    const batch = createRigDecoder(RIG, DEVICES).decode(
      batchOf(8000, [
        [0, 1000, [2, 9, 9, 255]],
        [1, 1100, [5]],
        [7, 1200, pedalReport(500, 500)],
        [1, 1300, [...word(100), 1]],
      ]),
    );
    expect([...batch.brake.value]).toEqual([0.1]);
    expect(batch.throttle.value.length).toBe(0);
    expect(batch.steering.value.length).toBe(0);
    expect(batch.buttons).toEqual([]);
  });

  test('buttons are told when they turn, not while they are held', () => {
    const decoder = createRigDecoder(RIG, DEVICES);
    const first = decoder.decode(
      batchOf(8000, [
        [0, 1000, wheelReport(0, 0b00)],
        [0, 2000, wheelReport(0, 0b10)],
        [0, 3000, wheelReport(0, 0b10)],
      ]),
    );
    const second = decoder.decode(
      batchOf(16000, [
        [0, 9000, wheelReport(0, 0b10)],
        [0, 10000, wheelReport(0, 0b01)],
      ]),
    );
    const paddle = { control: 'left paddle', action: 'downshift' };
    expect(first.buttons).toEqual([{ ...paddle, timeS: 0.002, pressed: true }]);
    expect(second.buttons).toEqual([
      { ...paddle, timeS: 0.01, pressed: false },
      { control: 'wheel button 1', action: null, timeS: 0.01, pressed: true },
    ]);
  });

  test('the first press of a device that reports on change is not lost', () => {
    const { buttons } = createRigDecoder(RIG, DEVICES).decode(
      batchOf(8000, [[0, 1000, wheelReport(0, 0b10)]]),
    );
    expect(buttons.map(({ pressed }) => pressed)).toEqual([true]);
  });

  test('a button that reads 0 while it is down', () => {
    const inverted = RIG.buttons.map((button) => ({ ...button, pressedCounts: 0 }));
    const { buttons } = createRigDecoder({ ...RIG, buttons: inverted }, DEVICES).decode(
      batchOf(8000, [
        [0, 1000, wheelReport(0, 0b11)],
        [0, 2000, wheelReport(0, 0b01)],
        [0, 3000, wheelReport(0, 0b11)],
      ]),
    );
    expect(buttons.map(({ control, pressed }) => [control, pressed])).toEqual([
      ['left paddle', true],
      ['left paddle', false],
    ]);
  });

  test('a button held while its device goes comes up', () => {
    const decoder = createRigDecoder(RIG, DEVICES);
    decoder.decode(batchOf(8000, [[0, 1000, wheelReport(0, 0b10)]]));
    decoder.deviceEvent({ kind: 'lost', device: 0, atUs: 9000, reason: 'unplugged' });
    const { buttons } = decoder.decode(batchOf(16000, []));
    expect(buttons.map(({ control, pressed }) => [control, pressed])).toEqual([
      ['left paddle', false],
    ]);
    expect(decoder.decode(batchOf(24000, [])).buttons).toEqual([]);
  });

  test('drops are passed on', () => {
    expect(createRigDecoder(RIG, DEVICES).decode(batchOf(8000, [], 17)).dropped).toBe(17);
  });

  test('batches do not overlap, whatever microsecond a report bears', () => {
    const step = fc.record({
      ahead: fc.integer({ min: 1, max: 9000 }),
      offsets: fc.array(fc.integer({ min: -50, max: 9050 }), { maxLength: 12 }),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const decoder = createRigDecoder(RIG, DEVICES);
        let nowUs = 0;
        let untilS = 0;
        decoder.decode(batchOf(0, []));
        for (const { ahead, offsets } of steps) {
          const times = offsets.map((us) => nowUs + us).sort((a, b) => a - b);
          nowUs += ahead;
          const batch = decoder.decode(
            batchOf(
              nowUs,
              times.map((us) => [1, us, pedalReport(1, 1)]),
            ),
          );
          expect(batch.brake.timeS.length).toBe(times.length);
          for (const [i, timeS] of batch.brake.timeS.entries()) {
            expect(timeS).toBeGreaterThan(untilS);
            expect(timeS).toBeLessThanOrEqual(batch.untilS);
            expect(timeS).toBeGreaterThanOrEqual(batch.brake.timeS[i - 1] ?? 0);
          }
          untilS = batch.untilS;
        }
      }),
    );
  });
});

describe('what devices say of themselves', () => {
  // Generic Desktop joystick with X, 8 bits, 10..200, null state.
  const descriptor = Uint8Array.from([
    0x05, 0x01, 0x09, 0x04, 0xa1, 0x01, 0x09, 0x30, 0x15, 10, 0x26, 200, 0, 0x75, 8, 0x95, 1, 0x81,
    0x42, 0xc0,
  ]);
  const field = { ...WORD, bitSize: 8 };
  const rig: Rig = {
    ...RIG,
    axes: [{ role: 'brake', device: identity(PEDALS), field, calibration: calibration(0, 250) }],
    buttons: [],
  };

  test('values outside the described range, null states among them, clamp and are counted', () => {
    const decoder = createRigDecoder(rig, [deviceOf(PEDALS, 'pedals', descriptor)]);
    const { brake } = decoder.decode(
      batchOf(
        8000,
        [10, 9, 0, 200, 201, 255].map((counts, i) => [0, 1000 * (i + 1), [counts]]),
      ),
    );
    expect([...brake.value]).toEqual([10, 10, 10, 200, 200, 200].map((counts) => counts / 250));
    expect(decoder.health()[0]?.outOfRange).toBe(4);
  });

  test('a descriptor nobody can read is done without', () => {
    const broken = deviceOf(PEDALS, 'pedals', Uint8Array.from([0xb4, 0xb4]));
    const { brake } = createRigDecoder(rig, [broken]).decode(batchOf(8000, [[0, 1, [255]]]));
    expect([...brake.value]).toEqual([1]);
  });
});

describe('health', () => {
  test('lists the devices of the rig in the order of the source', () => {
    const stranger = deviceOf(77, 'button box');
    const decoder = createRigDecoder(RIG, [stranger, wheel, pedals]);
    expect(decoder.health().map(({ name }) => name)).toEqual(['test wheel', 'test pedals']);
  });

  test('a device waits for its first movement until it has reported', () => {
    const decoder = createRigDecoder(RIG, DEVICES);
    decoder.decode(batchOf(8000, [[1, 1000, pedalReport(0, 0)]]));
    expect(decoder.health().map(({ waitingForMovement }) => waitingForMovement)).toEqual([
      true,
      false,
    ]);
  });

  test('a lost device is not connected until it is back', () => {
    const decoder = createRigDecoder(RIG, DEVICES);
    const connected = (): boolean[] => decoder.health().map((device) => device.connected);
    decoder.deviceEvent({ kind: 'lost', device: 1, atUs: 0, reason: 'unplugged' });
    expect(connected()).toEqual([true, false]);
    decoder.deviceEvent({ kind: 'back', device: 1, atUs: 1 });
    expect(connected()).toEqual([true, true]);
  });

  test('the brake device that streams at rest and falls silent gives a gap, also while it is open', () => {
    const decoder = createRigDecoder(RIG, DEVICES);
    for (let ms = 8; ms <= 80; ms += 8)
      decoder.decode(
        batchOf(
          ms * 1000,
          Array.from({ length: 8 }, (_, i) => [1, (ms - 7 + i) * 1000, pedalReport(0, 0)]),
        ),
      );
    expect(decoder.decode(batchOf(130_000, [])).gaps).toEqual([]);
    expect(decoder.decode(batchOf(131_000, [])).gaps).toEqual([{ fromS: 0.08, toS: 0.131 }]);
    const last = decoder.decode(batchOf(150_000, [[1, 140_000, pedalReport(0, 0)]]));
    expect(last.gaps).toEqual([{ fromS: 0.131, toS: 0.14 }]);
    expect(decoder.health()[1]).toMatchObject({ gaps: 1, streamsAtRest: true });
  });

  test('a silent wheel is no gap of the brake', () => {
    const decoder = createRigDecoder(RIG, DEVICES);
    const stream = Array.from(
      { length: 40 },
      (_, i) => [0, (i + 1) * 1000, wheelReport(0, 0)] as const,
    );
    decoder.decode(batchOf(40_000, stream));
    expect(decoder.decode(batchOf(500_000, [])).gaps).toEqual([]);
    expect(decoder.health()[0]?.gaps).toBe(1);
  });
});

describe('createRigDecoder refuses', () => {
  const cases: readonly (readonly [string, Rig, string])[] = [
    ['a rig without a brake', { ...RIG, axes: RIG.axes.slice(1) }, 'no brake pedal'],
    ['two brakes', { ...RIG, axes: [...RIG.axes, RIG.axes[0]!] }, 'two axes'],
    ['a wheel of unknown lock', { ...RIG, wheelLockDeg: null }, 'stop to stop'],
    [
      'a brake that is not plugged in',
      { ...RIG, axes: [{ ...RIG.axes[0]!, device: identity(99) }] },
      'not connected',
    ],
    [
      'a span that is too small',
      { ...RIG, axes: [{ ...RIG.axes[0]!, calibration: calibration(0, 20) }] },
      '20 counts',
    ],
  ];
  test.each(cases)('%s', (_name, rig, words) => {
    expect(() => createRigDecoder(rig, DEVICES)).toThrow(Problem);
    expect(() => createRigDecoder(rig, DEVICES)).toThrow(words);
  });

  test('but not a rig whose wheel is missing', () => {
    const decoder = createRigDecoder(RIG, [pedals]);
    expect(decoder.decode(batchOf(8000, [[0, 1, pedalReport(1000, 0)]])).brake.value[0]).toBe(1);
  });
});

test('of two devices that cannot be told apart only the first is heard', () => {
  const decoder = createRigDecoder(RIG, [pedals, { ...pedals, path: '/dev/other' }]);
  const { brake } = decoder.decode(
    batchOf(8000, [
      [0, 1000, pedalReport(100, 0)],
      [1, 2000, pedalReport(900, 0)],
    ]),
  );
  expect([...brake.value]).toEqual([0.1]);
});
