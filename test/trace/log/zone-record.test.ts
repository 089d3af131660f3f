import { expect, test } from 'vitest';
import type { LoggedZone } from '../../../src/trace/log/logged-zone.ts';
import {
  headLine,
  readTraceLines,
  summaryLine,
  zoneLine,
} from '../../../src/trace/log/zone-lines.ts';
import { zoneRecord } from '../../../src/trace/log/zone-record.ts';
import { csvOf, drive } from './driven-log.ts';
import { importText } from './import-text.ts';

const zone: LoggedZone = {
  number: 1,
  lap: null,
  line: 2,
  startS: 0,
  gaps: [],
  after: null,
  samples: new Map([
    ['time', Float64Array.of(0, 0.02, 0.03)],
    ['brake-front', Float64Array.of(0, 40e5, 100e5)],
    ['steering', Float64Array.of(10, 20, 20)],
  ]),
};

test('joins the rows by straight lines, as levels of full scale', () => {
  const { brake, steering, endS, brakeStepLevel } = zoneRecord(zone, 'brake-front', 80e5, 'right');
  expect(brake.timeS.length).toBe(31);
  expect(brake.value[10]).toBeCloseTo(0.25, 9);
  expect(brake.value[20]).toBeCloseTo(0.5, 9);
  expect(brake.value[30]).toBe(1);
  expect(steering!.value[10]).toBeCloseTo(-15, 9);
  expect({ endS, brakeStepLevel }).toEqual({ endS: 0.03, brakeStepLevel: 0.5 });
});

test('leaves steering out whose sign nobody knows', () => {
  expect(zoneRecord(zone, 'brake-front', 80e5, null).steering).toBe(null);
  expect(zoneRecord(zone, 'brake-front', 80e5, 'left').steering!.value[10]).toBeCloseTo(15, 9);
});

test('survives the file, and a file that was not finished is none', () => {
  const { zones, summary } = importText(csvOf(drive()));
  const lines = [headLine('a', 'a.csv'), ...zones.map(zoneLine)].join('');
  const read = readTraceLines(lines + summaryLine(summary))!;
  expect(read.summary).toEqual(summary);
  expect(read.zones.map(({ number, lap, line }) => [number, lap, line])).toEqual(
    zones.map(({ number, lap, line }) => [number, lap, line]),
  );
  read.zones.forEach(({ samples }, i) => {
    for (const [role, values] of samples)
      values.forEach((value, k) => {
        expect(value).toBeCloseTo(zones[i]!.samples.get(role)![k]!, 3);
      });
  });
  expect(readTraceLines(lines)).toBe(null);
});
