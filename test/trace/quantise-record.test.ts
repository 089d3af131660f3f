import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantiseRecord } from '../../src/trace/quantise-record.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { repRecord } from './rep-record.arbitrary.ts';

const EMPTY: RepRecord = {
  brake: { timeS: Float64Array.of(0.12344, 0.12346), value: Float64Array.of(-0, 1) },
  throttle: null,
  clutch: null,
  steering: { timeS: Float64Array.of(1), value: Float64Array.of(-12.3) },
  buttons: [],
  gaps: [],
  brakeStepLevel: 1 / 4095,
  endS: 2,
};

test('a stamp moves by half of 0.1 ms, a level by 2^-17 and the wheel by 1/128 degree at most', () => {
  const drift = (a: Float64Array, b: Float64Array): number =>
    Math.max(0, ...a.map((value, i) => Math.abs(value - b[i]!)));
  fc.assert(
    fc.property(repRecord, (record) => {
      const kept = quantiseRecord(record);
      // 1e-9 is for the rounding of the differences themselves
      expect(drift(record.brake.timeS, kept.brake.timeS)).toBeLessThan(0.05e-3 + 1e-9);
      expect(drift(record.brake.value, kept.brake.value)).toBeLessThan(2 ** -17 + 1e-9);
      if (record.clutch && kept.clutch)
        expect(drift(record.clutch.value, kept.clutch.value)).toBeLessThan(2 ** -15 + 1e-9);
      if (record.steering && kept.steering)
        expect(drift(record.steering.value, kept.steering.value)).toBeLessThan(1 / 128 + 1e-9);
    }),
  );
});

test('a second pass changes nothing and times keep their order', () => {
  fc.assert(
    fc.property(repRecord, (record) => {
      const kept = quantiseRecord(record);
      expect(quantiseRecord(kept)).toStrictEqual(kept);
      for (const track of [kept.brake, kept.steering])
        expect([...(track?.timeS ?? [])].sort((a, b) => a - b)).toEqual([...(track?.timeS ?? [])]);
    }),
  );
});

test('every count of a 16-bit brake keeps a level of its own, 0 and 1 exactly', () => {
  const counts = Float64Array.from({ length: 65_536 }, (_, i) => i / 65_535);
  const record = { ...EMPTY, brake: { timeS: new Float64Array(65_536), value: counts } };
  const kept = quantiseRecord(record).brake.value;
  expect(new Set(kept).size).toBe(65_536);
  expect([kept[0], kept[65_535]]).toEqual([0, 1]);
});

test('values by hand', () => {
  const kept = quantiseRecord(EMPTY);
  expect([...kept.brake.timeS]).toEqual([0.1234, 0.1235]);
  expect(Object.is(kept.brake.value[0], 0)).toBe(true);
  expect(kept.steering?.value[0]).toBe(-12.296875); // -787 / 64
  expect(kept.brakeStepLevel).toBe(1 / 4095);
});

test.each([Number.NaN, Number.POSITIVE_INFINITY, 5000])(
  'a level of %s is refused: the recorder must not make one',
  (level) => {
    const brake = { timeS: Float64Array.of(0), value: Float64Array.of(level) };
    expect(() => quantiseRecord({ ...EMPTY, brake })).toThrow(RangeError);
  },
);

test('times that go back are refused', () => {
  const brake = { timeS: Float64Array.of(1, 0.9), value: Float64Array.of(0, 0) };
  expect(() => quantiseRecord({ ...EMPTY, brake })).toThrow(RangeError);
});
