import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { scoreRep } from '../../src/score/score-rep.ts';
import { overTime } from '../../src/target/over-time.ts';
import { readTarget } from '../../src/target/read-target.ts';
import { trackWarnings } from '../../src/target/trackability.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { brakeAlone } from '../trace/brake-alone.ts';

const FOLDER = new URL('../../profiles/targets/', import.meta.url);

/** A rep at 1 kHz that starts its rise at 1 s. */
function repOf(levelAt: (timeS: number) => number, endS: number): RepRecord {
  const timeS = Float64Array.from({ length: Math.round((endS + 2) * 1000) }, (_, i) => i / 1000);
  return brakeAlone(
    timeS,
    timeS.map((t) => levelAt(t - 1)),
    endS + 2,
  );
}

describe.each(readdirSync(FOLDER))('%s', (file) => {
  const target = overTime(readTarget(readFileSync(new URL(file, FOLDER), 'utf8'), file));
  const { level, marks } = target;
  const score = (levelAt: (timeS: number) => number): number =>
    scoreRep(repOf(levelAt, marks.brakeOff), target).score;

  test('can be followed', () => {
    expect(trackWarnings(target)).toEqual([]);
  });

  test('its own curve scores full marks', () => {
    expect(score((t) => level.at(t))).toBeGreaterThan(99.5);
  });

  test('a foot that trails by 60 ms and wavers by 2 % still scores well', () => {
    const waver = (t: number): number => 0.02 * Math.sin(2 * Math.PI * 0.9 * t);
    const late = (t: number): number => (t < marks.startOfRelease ? t : t - 0.06);
    expect(score((t) => level.at(late(t)) * (1 + waver(t)))).toBeGreaterThan(70);
  });

  test('on and off scores nothing, wherever it is switched', () => {
    for (let offS = marks.peak; offS <= marks.brakeOff; offS += 0.2)
      for (const share of [1, 0.7])
        expect(
          score((t) => {
            if (t < marks.peak) return level.at(t);
            return t < offS ? share * target.peakLevel : 0;
          }),
        ).toBe(0);
  });
});
