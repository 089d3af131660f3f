import fc from 'fast-check';
import { expect, test } from 'vitest';
import { encodePack, packReader } from '../../src/history/sql/measure-pack.ts';
import type { MeasureRow } from '../../src/history/sql/measure-row.ts';

const number = fc.double({ noNaN: true, noDefaultInfinity: true });
const row: fc.Arbitrary<MeasureRow> = fc.record({
  targetId: fc.string({ unit: 'grapheme' }),
  targetVersion: fc.constant('v'),
  corner: fc.option(fc.string()),
  condition: fc.option(fc.constantFrom('dry', 'wet')),
  phase: fc.constantFrom('warm-up', 'block'),
  feedback: fc.constantFrom('shown', 'hidden'),
  selfRating: fc.option(fc.constant('late heavy')),
  voided: fc.option(fc.constant('aborted')),
  scoreVersion: fc.option(fc.constant(1)),
  id: fc.nat(),
  utcMs: fc.nat(),
  score: fc.option(number),
  releaseErrorLevel: fc.option(number),
  averageErrorLevel: fc.option(number),
  startOfReleaseErrorS: fc.option(number),
  peakError: fc.option(number),
  reapplications: fc.option(fc.nat()),
});

test('a pack says what its rows said, wherever in memory its bytes lie', () => {
  fc.assert(
    fc.property(fc.array(row, { maxLength: 20 }), fc.nat({ max: 9 }), (rows, offset) => {
      const bytes = encodePack(rows);
      const moved = new Uint8Array(offset + bytes.length).subarray(offset);
      moved.set(bytes);
      const pack = packReader()(moved);
      expect(pack?.reps).toBe(rows.length);
      for (const [i, { id, utcMs, score, peakError, ...rest }] of rows.entries()) {
        const at = (column: number): number => pack!.numbers[column * rows.length + i]!;
        expect([at(0), at(1)]).toEqual([id, utcMs]);
        expect(at(2)).toBe(score ?? Number.NaN);
        expect(at(6)).toBe(peakError ?? Number.NaN);
        expect(at(7)).toBe(rest.reapplications ?? Number.NaN);
        expect(rest).toMatchObject(pack!.kinds[pack!.places[i]!]!);
      }
    }),
  );
});

test('bytes of another length or format are no pack', () => {
  const bytes = encodePack([]);
  expect(packReader()(bytes)?.reps).toBe(0);
  expect(packReader()(bytes.subarray(1))).toBeNull();
  expect(packReader()(Uint8Array.from([...bytes, 0]))).toBeNull();
  expect(packReader()(bytes.map((byte, i) => (i === 0 ? 1 : byte)))).toBeNull();
});
