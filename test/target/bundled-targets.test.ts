import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { overTime } from '../../src/target/over-time.ts';
import { readTarget } from '../../src/target/read-target.ts';
import type { Target } from '../../src/target/target.ts';

const FOLDER = new URL('../../profiles/targets/', import.meta.url);
const files = readdirSync(FOLDER);
const text = (file: string): string => readFileSync(new URL(file, FOLDER), 'utf8');
const load = (file: string): Target => readTarget(text(file), file);

test('six corner types or more, in both domains, each with its own curve', () => {
  const targets = files.map(load);
  expect(new Set(targets.map(({ cornerType }) => cornerType)).size).toBeGreaterThanOrEqual(6);
  expect(new Set(targets.map(({ domain }) => domain)).size).toBe(2);
  expect(new Set(targets.map(({ version }) => version)).size).toBe(files.length);
});

describe.each(files)('%s', (file) => {
  const target = overTime(load(file));
  const { marks, level } = target;

  test('names its schema, so that editors complete it', () => {
    expect(text(file).split('\n')[0]).toBe(
      '# yaml-language-server: $schema=../schema/target.schema.json',
    );
  });

  test('has its key points in order', () => {
    const order = [
      marks.rise,
      marks.peak,
      marks.startOfRelease,
      marks.finalRelease,
      marks.brakeOff,
    ];
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(marks.rise).toBe(0);
  });

  // Rise and release durations as racing practice has them (common practice, no source).
  test('rises and releases in the time a foot takes', () => {
    expect(marks.peak).toBeGreaterThanOrEqual(0.1);
    expect(marks.peak).toBeLessThanOrEqual(0.4);
    const release = marks.brakeOff - marks.startOfRelease;
    expect(release).toBeGreaterThanOrEqual(0.8);
    expect(release).toBeLessThanOrEqual(2.5);
  });

  test('rises to one peak and never rises again', () => {
    // The table's own tolerance: a cell may lie across the corner at the peak.
    const slack = 1e-4;
    let before = target.peakLevel;
    for (let timeS = marks.peak; timeS <= marks.brakeOff + 0.1; timeS += 0.001) {
      expect(level.at(timeS)).toBeLessThanOrEqual(before + slack);
      before = level.at(timeS);
    }
    expect(level.at(marks.peak)).toBeCloseTo(target.peakLevel, 3);
    expect(level.at(marks.brakeOff)).toBeCloseTo(0, 6);
    expect(level.at(marks.rise)).toBe(0);
  });

  test('tells the driver something', () => {
    expect(target.advice).not.toBeNull();
    expect(target.name.length).toBeLessThanOrEqual(24);
  });
});
