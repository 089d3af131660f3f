import { describe, expect, test } from 'vitest';
import {
  headLine,
  readTraceLines,
  summaryLine,
  zoneLine,
} from '../../../src/trace/log/zone-lines.ts';
import { csvOf, drive, ZONE } from './driven-log.ts';
import { importBytes, importText } from './import-text.ts';

/** The margin that a zone keeps after its brake went off. */
const MARGIN_S = 1.3;
const plain = csvOf(drive());

describe('the way out of a corner', () => {
  test('follows the zone without a hole, up to the next brake, without the brake', () => {
    const { zones } = importText(plain);
    expect(zones).toHaveLength(3);
    const { samples, after } = zones[0]!;
    const [inside, out] = [samples.get('time')!, after!.get('time')!];
    expect(out[0]! - inside.at(-1)!).toBeCloseTo(0.01, 6);
    expect(out[1]! - out[0]!).toBeCloseTo(0.04, 6);
    // off at 2.5 s, the next zone begins at 10 s; six seconds would end later
    expect(out.at(-1)!).toBeGreaterThan(ZONE.offS + MARGIN_S + 5.5);
    expect(out.at(-1)!).toBeLessThan(ZONE.everyS);
    expect([...after!.keys()]).toEqual(['time', 'speed', 'longitudinal-acceleration']);
    expect(after!.get('speed')![0]).toBeCloseTo(samples.get('speed')!.at(-1)!, 0);
  });

  test('is six seconds at most', () => {
    const more = Array.from({ length: 800 }, (_, i) => `${(13 + i / 100).toFixed(3)},0,60,2,0\n`);
    const [zone] = importText(csvOf(drive({ zones: 1 })) + more.join('')).zones;
    const endS = zone!.samples.get('time')!.at(-1)!;
    expect(zone!.after!.get('time')!.at(-1)! - endS).toBeCloseTo(6, 1);
  });

  test('is what there is at the end of the log', () => {
    const { after } = importText(csvOf(drive({ zones: 1 }))).zones[0]!;
    expect(after!.get('time')!.at(-1)!).toBeCloseTo(13 - ZONE.firstS, 1);
  });

  test('is empty where the next brake or the end of the log comes first', () => {
    const cut = plain
      .split('\n')
      .slice(0, 1 + 100 * (ZONE.firstS + 3))
      .join('\n');
    expect(importText(cut).zones[0]!.after).toBeNull();
  });

  test('ends at a gap', () => {
    const rows = plain.split('\n').filter((row) => !/^1[01]\./.test(row));
    const { after } = importText(rows.join('\n')).zones[0]!;
    expect(after!.get('time')!.at(-1)!).toBeCloseTo(9.99 - ZONE.firstS, 1);
  });

  test('is the same for any division of the bytes', () => {
    const bytes = new TextEncoder().encode(plain);
    const chunks = Array.from({ length: Math.ceil(bytes.length / 997) }, (_, i) =>
      bytes.subarray(997 * i, 997 * (i + 1)),
    );
    expect(importBytes(chunks)).toEqual(importText(plain));
  });

  test('is kept in the file, and files of before it was kept are still read', () => {
    const { zones, summary } = importText(plain);
    const lines = [headLine('a', 'a.csv'), ...zones.map(zoneLine), summaryLine(summary)];
    const read = readTraceLines(lines.join(''))!;
    expect(read.zones[0]!.after!.get('speed')).toHaveLength(zones[0]!.after!.get('speed')!.length);
    const old = lines.join('').replace(/,"after":\{[^}]*\}/g, '');
    expect(old).not.toContain('after');
    expect(readTraceLines(old)!.zones.map(({ after }) => after)).toEqual([null, null, null]);
  });
});
