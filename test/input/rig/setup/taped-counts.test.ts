import { describe, expect, test } from 'vitest';
import {
  heldExtreme,
  settledCounts,
  tapedCounts,
} from '../../../../src/input/rig/setup/taped-counts.ts';
import { word } from '../../report-batches.ts';
import { WORD } from '../calibration.ts';

const ms = (...times: number[]): number[] => times.map((time) => time * 1000);

describe('heldExtreme', () => {
  test('a value that held for 50 ms in total counts, a shorter peak does not', () => {
    const taped = { timeUs: ms(0, 100, 110, 160, 300), counts: [10, 900, 800, 200, 10] };
    // 900 for 10 ms, 800 or more for 60 ms.
    expect(heldExtreme(taped, 1)).toBe(800);
  });

  test('adds up several presses', () => {
    const taped = { timeUs: ms(0, 100, 130, 200, 230), counts: [10, 900, 10, 900, 10] };
    expect(heldExtreme(taped, 1)).toBe(900);
  });

  test('goes downwards where the axis counts down', () => {
    const taped = { timeUs: ms(0, 100, 200), counts: [1000, 100, 1000] };
    expect(heldExtreme(taped, -1)).toBe(100);
  });

  test('of nothing is null, of one report that report', () => {
    expect(heldExtreme({ timeUs: [], counts: [] }, 1)).toBeNull();
    expect(heldExtreme({ timeUs: ms(5), counts: [7] }, 1)).toBe(7);
  });
});

test('settledCounts is the middle of the last half second', () => {
  const taped = { timeUs: ms(0, 100, 601, 700, 1100), counts: [1, 2, 50, 52, 51] };
  expect(settledCounts(taped)).toBe(51);
  expect(settledCounts({ timeUs: [], counts: [] })).toBeNull();
});

test('tapedCounts reads one field of one device', () => {
  const taped = [
    { device: 0, timeUs: 1, bytes: Uint8Array.from(word(300)) },
    { device: 1, timeUs: 2, bytes: Uint8Array.from(word(400)) },
    { device: 0, timeUs: 3, bytes: Uint8Array.of(1) },
    { device: 0, timeUs: 4, bytes: Uint8Array.from(word(500)) },
  ];
  expect(tapedCounts(taped, 0, WORD)).toEqual({ timeUs: [1, 4], counts: [300, 500] });
});
