import { describe, expect, test } from 'vitest';
import { compileField } from '../../../src/input/hid/compile-field.ts';
import type { ControlRecording } from '../../../src/input/hid/control-recording.ts';
import { type LearnedAxis, learnAxis } from '../../../src/input/hid/learn-axis.ts';
import {
  PRESSES_S,
  record,
  type SimulatedDevice,
  STILL,
  seededRandom,
  threePresses,
} from './simulated-device.ts';
import {
  at,
  brake,
  checksum,
  constant,
  counter,
  EXAMPLE_SEED,
  type Place,
  recordBrake,
  SEED,
  throttle,
  unnumbered,
  wheel,
} from './simulated-layouts.ts';
import { unpackField } from './unpack-field.ts';

function learnedAxis(recording: ControlRecording): LearnedAxis {
  const result = learnAxis(recording);
  return result.kind === 'axis' ? result : expect.unreachable(result.reason);
}

interface Case {
  readonly name: string;
  readonly device: SimulatedDevice;
  readonly field: [reportId: number, bitOffset: number, bitSize: number, signed: boolean];
  readonly rest: number;
  readonly full: number;
  readonly centred?: boolean;
}

const BUTTONS: Place = [0, 12];
const cases: Case[] = [
  {
    name: '8 bits in a byte between a counter and a checksum',
    device: unnumbered(4, [counter([0, 8]), brake([8, 8]), throttle([16, 8]), checksum([24, 8])]),
    field: [0, 8, 8, false],
    rest: 0,
    full: 255,
  },
  {
    name: '8 bits above a counter, noisy',
    device: unnumbered(3, [counter([0, 8], 7), brake([8, 8], 3, 250, 1), constant([16, 8], 0x80)]),
    field: [0, 8, 8, false],
    rest: 3,
    full: 250,
  },
  {
    name: '8 bits inverted, as pedals are that rest at 255',
    device: unnumbered(3, [wheel([0, 8], 0.5), brake([8, 8], 255, 0), throttle([16, 8], 255, 0)]),
    field: [0, 8, 8, false],
    rest: 255,
    full: 0,
  },
  {
    name: '16 bits of 0..10000',
    device: unnumbered(6, [throttle([0, 16], 0, 10000), brake([16, 16], 0, 10000)]),
    field: [0, 16, 16, false],
    rest: 0,
    full: 10000,
  },
  {
    name: '16 bits over the whole range with noise, below a noisy wheel at its centre',
    device: unnumbered(6, [brake([0, 16], 900, 65000, 20), wheel([16, 16], 3), throttle([32, 16])]),
    field: [0, 0, 16, false],
    rest: 900,
    full: 65000,
  },
  {
    name: '16 bits signed, resting at the bottom',
    device: unnumbered(4, [brake([0, 16], -32767, 32767), throttle([16, 16], -32767, 32767)]),
    field: [0, 0, 16, true],
    rest: -32767,
    full: 32767,
  },
  {
    name: '16 bits signed and inverted',
    device: unnumbered(4, [throttle([0, 16], 32767, -32767), brake([16, 16], 32767, -32767)]),
    field: [0, 16, 16, true],
    rest: 32767,
    full: -32767,
  },
  {
    name: '16 bits under a light foot: a fifth of the range, so the top bits are headroom',
    device: unnumbered(4, [brake([0, 16], 400, 14000), throttle([16, 16])]),
    field: [0, 0, 16, false],
    rest: 400,
    full: 14000,
  },
  ...[
    [10, 10],
    [13, 12],
    [21, 14],
    [11, 16],
    [9, 8],
    [15, 10],
    [12, 12],
    [19, 14],
  ].map(
    ([offset, size]): Case => ({
      name: `${size} bits from bit ${offset}, between buttons and a second pedal`,
      device: unnumbered(8, [
        constant([0, offset!], 5),
        brake([offset!, size!]),
        throttle([offset! + size!, size!]),
      ]),
      field: [0, offset!, size!, false],
      rest: 0,
      full: 2 ** size! - 1,
    }),
  ),
  {
    name: '10 bits packed three in a row, from bit 0 on',
    device: unnumbered(4, [brake([0, 10]), throttle([10, 10]), wheel([20, 10])]),
    field: [0, 0, 10, false],
    rest: 0,
    full: 1023,
  },
  {
    name: '12 bits packed, the pedal second',
    device: unnumbered(6, [throttle([0, 12]), brake([12, 12], 4000, 20, 1.2), wheel([24, 12])]),
    field: [0, 12, 12, false],
    rest: 4000,
    full: 20,
  },
  {
    name: '14 bits after a 16-bit clock, at 1000 reports a second',
    device: unnumbered(
      6,
      [counter([0, 16]), brake([16, 14], 30, 16000, 4), constant([30, 8], 3)],
      1000,
    ),
    field: [0, 16, 14, false],
    rest: 30,
    full: 16000,
  },
  {
    name: '12 bits beside a slow clock and random bytes',
    device: unnumbered(7, [
      at([0, 16], ({ index }) => Math.trunc(index / 3) % 65536),
      at([16, 8], ({ random }) => Math.trunc(256 * random())),
      brake([27, 12], 12, 4090, 2),
      at([40, 8], ({ random }) => Math.trunc(256 * random())),
    ]),
    field: [0, 27, 12, false],
    rest: 12,
    full: 4090,
  },
  {
    name: '12 bits above a counter in the low nibble, moved too fast for its carries',
    device: unnumbered(4, [counter([0, 4]), brake([4, 12]), throttle([16, 8])], 125),
    field: [0, 4, 12, false],
    rest: 0,
    full: 4095,
  },
  {
    name: '12 bits with noise above a counter in the low nibble',
    device: unnumbered(4, [counter([0, 4]), brake([4, 12], 30, 4000, 1), throttle([16, 8])], 500),
    field: [0, 4, 12, false],
    rest: 30,
    full: 4000,
  },
  {
    name: '16 bits from bit 5 with noise that hides one digit and not the next',
    device: unnumbered(5, [brake([5, 16], 37, 65533, 2)]),
    field: [0, 5, 16, false],
    rest: 37,
    full: 65533,
  },
  {
    name: '12 bits above a random nibble',
    device: unnumbered(4, [
      at([0, 4], ({ random }) => Math.trunc(16 * random())),
      brake([4, 12]),
      throttle([16, 8]),
    ]),
    field: [0, 4, 12, false],
    rest: 0,
    full: 4095,
  },
  {
    name: '16 bits signed under a light foot, through 0',
    device: unnumbered(4, [brake([0, 16], -2000, 6000), throttle([16, 16])]),
    field: [0, 0, 16, true],
    rest: -2000,
    full: 6000,
    centred: true,
  },
  {
    name: '16 bits that go a little through the middle',
    device: unnumbered(4, [brake([0, 16], 0x7000, 0x9000), throttle([16, 16])]),
    field: [0, 0, 16, false],
    rest: 0x7000,
    full: 0x9000,
    centred: true,
  },
  {
    name: '8 bits below a value that drifts by three counts',
    device: unnumbered(3, [
      brake([0, 8]),
      at([8, 8], ({ index, timeS }) =>
        index < 1003 ? 0 : [0, 0, 1, 2, 3, 2, 2][Math.trunc(timeS * 1.2)]!,
      ),
    ]),
    field: [0, 0, 8, false],
    rest: 0,
    full: 255,
  },
  {
    name: '8 bits beside a value that swings by itself',
    device: unnumbered(3, [
      brake([0, 8]),
      at([8, 8], ({ index }) => Math.round(128 + 100 * Math.sin(index / 60))),
    ]),
    field: [0, 0, 8, false],
    rest: 0,
    full: 255,
  },
  {
    name: '8 bits beside a value that shakes with the pedal',
    device: unnumbered(
      3,
      [
        brake([0, 8]),
        at([8, 8], ({ brake: level, timeS }) =>
          Math.round(128 + 100 * Math.min(1, 4 * level) * Math.sin(100 * timeS)),
        ),
      ],
      500,
    ),
    field: [0, 0, 8, false],
    rest: 0,
    full: 255,
  },
  {
    name: 'at 125 reports a second',
    device: unnumbered(
      4,
      [constant(BUTTONS, 0), brake([16, 8], 2, 251, 1), throttle([24, 8])],
      125,
    ),
    field: [0, 16, 8, false],
    rest: 2,
    full: 251,
  },
  {
    name: 'two report kinds of one length, alternating',
    device: {
      rateHz: 250,
      bytes: { 1: 4, 2: 4 },
      fields: [
        { ...counter([0, 8]), reportId: 1 },
        { ...wheel([16, 16], 2), reportId: 1 },
        { ...throttle([0, 16]), reportId: 2 },
        { ...brake([16, 16], 100, 60000, 5), reportId: 2 },
      ],
    },
    field: [2, 16, 16, false],
    rest: 100,
    full: 60000,
  },
  {
    name: 'two report kinds of different lengths',
    device: {
      rateHz: 250,
      bytes: { 4: 3, 9: 6 },
      fields: [
        { ...brake([4, 12], 4095, 0), reportId: 4 },
        { ...wheel([0, 16], 2), reportId: 9 },
      ],
    },
    field: [4, 4, 12, false],
    rest: 4095,
    full: 0,
  },
  {
    name: 'one half of a combined axis: it rests in the middle',
    device: unnumbered(3, [
      at([8, 8], (m) => Math.round(128 + 127 * m.brake - 128 * m.throttle)),
      wheel([16, 8], 0.6),
    ]),
    field: [0, 8, 8, false],
    rest: 128,
    full: 255,
    centred: true,
  },
  {
    name: '8 bits that an XOR of all bytes follows while nothing else moves',
    device: unnumbered(
      8,
      [
        wheel([0, 16], 4),
        throttle([16, 15], 3, 32760, 3),
        constant([31, 9], 8),
        brake([40, 8], 2, 253, 0.6),
        at([56, 8], ({ bytes }) => bytes.reduce((all, byte) => all ^ byte, 0)),
      ],
      1000,
    ),
    field: [0, 40, 8, false],
    rest: 2,
    full: 253,
  },
];

describe('finds the brake', () => {
  test.each(cases)('$name', ({ device, field, rest, full, centred }) => {
    const axis = learnedAxis(recordBrake(device));
    const { reportId, bitOffset, bitSize, signed } = axis.field;
    expect([reportId, bitOffset, bitSize, signed]).toEqual(field);
    const tolerance = 0.003 * Math.abs(full - rest) + 2;
    expect(Math.abs(axis.restCounts - rest)).toBeLessThanOrEqual(tolerance);
    expect(Math.abs(axis.fullCounts - full)).toBeLessThanOrEqual(tolerance);
    expect(axis.inverted).toBe(full < rest);
    expect(axis.centred).toBe(centred ?? false);
    expect(axis.copies).toEqual([]);
  });
});

/** The place is not always knowable (bits that never moved, digits in the noise); what the field reads must be. */
describe('property: any layout, read back by an independent decoder', () => {
  test.each(Array.from({ length: 24 }, (_, i) => SEED + i))('seed %i', (seed) => {
    const random = seededRandom(seed);
    const pick = (n: number): number => Math.trunc(n * random());
    const size = 8 + pick(9);
    const start = pick(14);
    const top = 2 ** size - 1;
    const [low, high] = [pick(5), top - pick(5)];
    const [rest, full] = pick(2) === 1 ? [high, low] : [low, high];
    const noise = size > 10 ? pick(4) : pick(2) * 0.6;
    const device = unnumbered(
      8,
      [
        pick(2) === 1 ? counter([0, start]) : constant([0, start], pick(2 ** start)),
        brake([start, size], rest, full, noise),
        throttle([start + size, 12], 0, 4095, 1),
        checksum([56, 8]),
      ],
      [125, 250, 500][pick(3)],
    );
    const recording = recordBrake(device, 0, seed);
    const { field, inverted, restCounts, fullCounts } = learnedAxis(recording);
    expect(inverted).toBe(full < rest);
    const read = compileField(field);
    const errors = recording.moved.map((report) => {
      const truth = (unpackField(report, start, size, false) - rest) / (full - rest);
      const found = (read(report, 0, 8)! - restCounts) / (fullCounts - restCounts);
      return Math.abs(found - truth);
    });
    const tolerance = 0.001 + (1 + 2 * noise) / Math.abs(full - rest);
    expect(Math.max(...errors)).toBeLessThanOrEqual(tolerance);
  });
});

describe('with the fields of a descriptor', () => {
  const device = unnumbered(5, [counter([0, 8]), brake([8, 10], 20, 1000, 1), throttle([18, 10])]);
  const fields = [
    { reportId: 0, bitOffset: 0, bitSize: 8, signed: false },
    { reportId: 0, bitOffset: 8, bitSize: 10, signed: false },
    { reportId: 0, bitOffset: 18, bitSize: 10, signed: false },
    { reportId: 0, bitOffset: 28, bitSize: 1, signed: false },
  ];
  test('takes the field that moved', () =>
    expect(learnedAxis({ ...recordBrake(device), fields }).field).toEqual(fields[1]));
  test('refuses when the moving bits are in none of them', () => {
    const result = learnAxis({ ...recordBrake(device), fields: fields.slice(2) });
    expect(result.kind).toBe('refused');
  });
  test('takes a told report id as such', () => {
    const numbered: SimulatedDevice = {
      rateHz: 250,
      bytes: { 3: 3 },
      fields: [{ ...brake([8, 12]), reportId: 3 }],
    };
    const recording = recordBrake(numbered);
    expect(learnedAxis({ ...recording, numbered: true }).field).toMatchObject({
      reportId: 3,
      bitOffset: 8,
    });
    expect(learnedAxis(recording).field).toMatchObject({ reportId: 0, bitOffset: 16 });
  });
});

describe('a device that reports on change only', () => {
  const device: SimulatedDevice = {
    ...unnumbered(4, [constant([0, 8], 0), brake([8, 16], 5, 60000), throttle([24, 8])]),
    onChangeOnly: true,
  };
  test('is learned without a report at rest', () => {
    const recording = { ...recordBrake(device), rest: [] };
    const axis = learnedAxis(recording);
    expect(axis.field).toMatchObject({ bitOffset: 8, bitSize: 16 });
    expect([axis.restCounts, axis.noiseCounts]).toEqual([5, null]);
  });
});

test('one press is enough for a quiet signal', () => {
  const device = unnumbered(4, [brake([3, 12], 10, 4000), throttle([16, 8])]);
  const { moved, ...recording } = recordBrake(device);
  const once = { ...recording, moved: moved.slice(0, 450) };
  expect(learnedAxis(once).field).toMatchObject({ bitOffset: 3, bitSize: 12 });
});

describe('what goes along with the control', () => {
  const jogged = unnumbered(5, [
    brake([0, 16], 0, 60000, 3),
    wheel([16, 16], 2),
    throttle([32, 8]),
  ]);
  test('a wheel jogged by a hundredth is no second control', () =>
    expect(learnedAxis(recordBrake(jogged, 0.02)).field).toMatchObject({ bitOffset: 0 }));
  test('a wheel turned by a third is not, unless it is known to go further on its own', () => {
    const recording = recordBrake(jogged, 0.6);
    expect(learnAxis({ ...recording, others: [] })).toMatchObject({
      kind: 'refused',
      reason: 'several-moved',
    });
    const light = recordBrake(jogged, 0.2);
    expect(learnedAxis(light).field).toMatchObject({ bitOffset: 0 });
  });
  test('not even where the wheel was never recorded on its own', () => {
    const recording = { ...recordBrake(jogged, 0.02), others: [] };
    expect(learnedAxis(recording).field).toMatchObject({ bitOffset: 0 });
  });
  test('a fine wheel jogged by a tenth does not hide a coarse pedal', () => {
    const coarse = unnumbered(5, [brake([0, 8]), wheel([16, 16], 2), throttle([32, 8])]);
    expect(learnedAxis(recordBrake(coarse, 0.1)).field).toMatchObject({ bitOffset: 0, bitSize: 8 });
  });
  test('a copy the other way round is one, too', () => {
    const device = unnumbered(4, [
      at([0, 8], (m) => Math.round(255 - 255 * m.brake)),
      brake([8, 12], 0, 4095),
    ]);
    expect(learnedAxis(recordBrake(device)).copies).toMatchObject([{ bitOffset: 0 }]);
  });
  test('a coarse copy of the same pedal is named and the fine one taken', () => {
    const device = unnumbered(4, [
      at([0, 8], (m) => Math.round(255 * m.brake)),
      brake([8, 12], 0, 4095),
      constant([20, 4], 0),
    ]);
    const axis = learnedAxis(recordBrake(device));
    expect(axis.field).toMatchObject({ bitOffset: 8 });
    expect(axis.copies).toEqual([{ reportId: 0, bitOffset: 0, bitSize: 8, signed: false }]);
  });
  test('of a combined axis and the pedal alone, the pedal alone is taken', () => {
    const device = unnumbered(4, [
      at([0, 16], (m) => Math.round(32768 + 32767 * (m.brake - m.throttle))),
      brake([16, 8]),
    ]);
    expect(learnedAxis(recordBrake(device)).field).toMatchObject({ bitOffset: 16, bitSize: 8 });
  });
});

describe('refuses', () => {
  const random = seededRandom(EXAMPLE_SEED);
  const device = unnumbered(6, [
    counter([0, 8]),
    brake([8, 16], 20, 60000, 4),
    throttle([24, 8]),
    at([32, 1], (m) => Number(m.paddle)),
    checksum([40, 8]),
  ]);
  const rest = record(device, () => STILL, 2, random);
  const reasonOf = (moved: Uint8Array[], still: Uint8Array[] = rest): string => {
    const result = learnAxis({ rest: still, moved, others: [], numbered: null, fields: null });
    return result.kind === 'refused' ? result.reason : expect.unreachable('learned something');
  };
  const during = (
    action: Parameters<typeof record>[1],
    of: SimulatedDevice = device,
  ): Uint8Array[] => record(of, action, PRESSES_S, random, 777);

  test('an empty recording', () => expect(reasonOf([])).toBe('no-reports'));
  test('a still one, counters and noise notwithstanding', () =>
    expect(reasonOf(during(() => STILL))).toBe('nothing-moved'));
  test('a clock that runs alone', () => {
    const clock = unnumbered(4, [counter([0, 16]), constant([16, 16], 0)], 1000);
    const idle = record(clock, () => STILL, 1, random);
    expect(
      reasonOf(
        record(clock, () => STILL, 5, random, 1000),
        idle,
      ),
    ).toBe('nothing-moved');
  });
  test('two pedals at once, and says which fields', () => {
    const moved = during((t) => ({ brake: threePresses(t), throttle: threePresses(t * 1.3) }));
    const result = learnAxis({ rest, moved, others: [], numbered: null, fields: null });
    expect(result).toMatchObject({ kind: 'refused', reason: 'several-moved' });
    expect(result.kind === 'refused' && result.moved.map((f) => f.bitOffset).sort()).toEqual([
      24, 8,
    ]);
  });
  test('a pedal that is pressed and held', () =>
    expect(reasonOf(during((t) => ({ brake: Math.min(1, t) })))).toBe('not-released'));
  test('a button', () =>
    expect(reasonOf(during((t) => ({ paddle: threePresses(t) > 0.5 })))).toBe('not-an-axis'));
  test('a signal that is mostly noise', () => {
    const wild = unnumbered(3, [brake([8, 12], 200, 3800, 0), constant([0, 8], 1)]);
    const noisy: SimulatedDevice = {
      ...wild,
      fields: [at([8, 12], (m) => Math.trunc(m.brake * 4095 * m.random()))],
    };
    const moved = during((t) => ({ brake: threePresses(t) }), noisy);
    expect(
      reasonOf(
        moved,
        record(noisy, () => STILL, 1, random),
      ),
    ).toBe('too-noisy');
  });
  test.each([
    ['an 8-bit pedal moved by 20 counts', brake([8, 8], 3, 23), 'too-small'],
    ['a 12-bit pedal moved by 12 counts', brake([8, 12], 400, 412), 'too-small'],
    ['an inverted 16-bit pedal moved by 15 counts', brake([8, 16], 65000, 64985), 'too-small'],
    [
      'a 12-bit pedal moved by less than twice its noise',
      brake([8, 12], 400, 420, 5),
      'nothing-moved',
    ],
  ] as const)('%s', (_, field, reason) => {
    const gentle = unnumbered(5, [counter([0, 8]), field, throttle([24, 8])]);
    const still = record(gentle, () => STILL, 2, random);
    expect(
      reasonOf(
        during((t) => ({ brake: threePresses(t) }), gentle),
        still,
      ),
    ).toBe(reason);
  });
  test('two pedals pressed almost as one, which a copy never does', () => {
    const twins = unnumbered(5, [brake([0, 16], 20, 60000, 4), throttle([16, 16], 20, 60000, 4)]);
    const still = record(twins, () => STILL, 2, random);
    const moved = during((t) => {
      const level = threePresses(t);
      return { brake: level, throttle: level * (1 - 0.04 * Math.sin(3 * t) ** 2) };
    }, twins);
    const result = learnAxis({ rest: still, moved, others: [], numbered: null, fields: null });
    expect(result).toMatchObject({ kind: 'refused', reason: 'alike' });
    expect(result.kind === 'refused' && result.message).toContain('Move one alone');
    expect(result.kind === 'refused' && result.moved.map((f) => f.bitOffset).sort()).toEqual([
      0, 16,
    ]);
  });
  test('two identical axes with a descriptor just as without one', () => {
    const twins = unnumbered(5, [brake([0, 12], 20, 4000, 2), throttle([12, 12], 20, 4000, 2)]);
    const still = record(twins, () => STILL, 2, random);
    const moved = during((t) => {
      const level = threePresses(t);
      return { brake: level, throttle: level * (1 - 0.04 * Math.sin(3 * t) ** 2) };
    }, twins);
    const fields = [0, 12].map((bitOffset) => ({
      reportId: 0,
      bitOffset,
      bitSize: 12,
      signed: false,
    }));
    const result = learnAxis({ rest: still, moved, others: [], numbered: false, fields });
    expect(result).toMatchObject({ kind: 'refused', reason: 'alike', moved: fields });
  });
  test('reports too short to hold an axis', () =>
    expect(reasonOf([Uint8Array.of(1), Uint8Array.of(2)], [])).toBe('nothing-moved'));
});
