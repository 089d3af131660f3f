import { bench, describe } from 'vitest';
import { compileField } from '../../src/input/hid/compile-field.ts';
import { packField } from '../input/hid/pack-field.ts';
import { seededRandom } from '../input/hid/simulated-device.ts';

/*
 * One iteration decodes one field of 1000 reports that lie in columns, as a source delivers them: the mean in
 * microseconds is nanoseconds per decoded field. The floor is a bare DataView read of the same reports in the same run;
 * at 1000 reports a second a field may cost 1 000 000 ns.
 */
const REPORTS = 1000;
const LENGTH = 12;
const random = seededRandom(20260101);
const bytes = new Uint8Array(REPORTS * LENGTH).map(() => Math.trunc(256 * random()));
const offsets = Uint32Array.from({ length: REPORTS }, (_, i) => i * LENGTH);
for (const offset of offsets) packField(bytes, 8 * offset, 8, 1);
const view = new DataView(bytes.buffer);

/** Keeps the work from being optimised away. */
const sink = { total: 0 };

describe('1000 reports, one field each', () => {
  bench('floor: DataView, 16 bits at a byte', () => {
    for (const offset of offsets) sink.total += view.getUint16(offset + 3, true);
  });

  const cases: [string, number, number, boolean, number][] = [
    ['8 bits at a byte', 16, 8, false, 0],
    ['16 bits at a byte', 24, 16, false, 0],
    ['16 bits at a byte, signed, numbered report', 16, 16, true, 1],
    ['14 bits at bit 5', 21, 14, false, 0],
    ['1 bit', 19, 1, false, 0],
    ['32 bits at bit 3', 27, 32, false, 0],
  ];
  for (const [name, bitOffset, bitSize, signed, reportId] of cases) {
    const read = compileField({ reportId, bitOffset, bitSize, signed });
    bench(name, () => {
      for (const offset of offsets) sink.total += read(bytes, offset, LENGTH) ?? 0;
    });
  }
});
