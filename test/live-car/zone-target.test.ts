import { expect, test } from 'vitest';
import { targetFileOf, targetFileText } from '../../src/target/derive/target-file-text.ts';
import { overTime } from '../../src/target/over-time.ts';
import { readTarget, targetOfKeys } from '../../src/target/read-target.ts';
import type { Target } from '../../src/target/target.ts';
import type { DistanceTargetFile } from '../../src/target/target-file.ts';
import { CARS, SHEETS } from '../target/derive/bundled-zones.ts';
import { bundledZone } from './bundled-zone.ts';

/** Of the whole curve, in 2000 steps. */
function places({ start, end }: { readonly start: number; readonly end: number }): number[] {
  return Array.from({ length: 2001 }, (_, i) => start + ((end - start) * i) / 2000);
}

test.each(CARS)('the target of the live $id is the one that its file says', ({ id }) => {
  for (const { id: corner } of SHEETS) {
    const { target, derived } = bundledZone(id, corner);
    const read = overTime(readTarget(targetFileText(derived, null), 'own.yaml'));
    const { level, steering, corridorAt } = target;
    expect(wordsOf(target)).toEqual(wordsOf(read));
    expect(places(level).map((t) => level.at(t))).toEqual(
      places(level).map((t) => read.level.at(t)),
    );
    expect(places(level).map((t) => corridorAt(t))).toEqual(
      places(level).map((t) => read.corridorAt(t)),
    );
    expect(steering && places(steering).map((t) => steering.at(t))).toEqual(
      steering && read.steering && places(steering).map((t) => read.steering?.at(t)),
    );
  }
});

/** All but the curves and what names the target. */
function wordsOf({
  id: _,
  version: __,
  level: ___,
  steering: ____,
  corridorAt: _____,
  ...words
}: Target): object {
  return words;
}

test('keys that a file would be refused for make no target', () => {
  const { derived } = bundledZone('gt', 'kiln-hairpin');
  const file = targetFileOf(derived, null);
  const refused = (change: Partial<DistanceTargetFile>): boolean =>
    targetOfKeys({ ...file, ...change }, 'own') === null;
  expect(refused({})).toBe(false);
  // More than full scale; a corner that is left faster than it is entered.
  expect(refused({ peak_level: 1.2 })).toBe(true);
  expect(refused({ entry_speed_mps: 20, slowest_speed_mps: 40 })).toBe(true);
});
