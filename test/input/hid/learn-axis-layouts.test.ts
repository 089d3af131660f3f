import { describe, expect, test } from 'vitest';
import { compileField } from '../../../src/input/hid/compile-field.ts';
import { learnAxis } from '../../../src/input/hid/learn-axis.ts';
import { generatedLayout } from './generated-layouts.ts';
import { SEED } from './simulated-layouts.ts';
import { unpackField } from './unpack-field.ts';

const COUNT = Number(process.env.LAYOUTS ?? 30);
const layouts = Array.from({ length: COUNT }, (_, i) => generatedLayout(SEED + 1000 + i));

/**
 * The place is not always knowable (bits that never moved, digits in the noise, a combined axis of which only one half
 * was seen); what the field reads must be the brake, by an independent decoder, in every report.
 */
describe('learning by moving finds the brake in a generated report', () => {
  for (const { name, brake, recording } of layouts)
    test(name, () => {
      const found = learnAxis(recording);
      if (found.kind === 'refused') return expect.unreachable(`${found.reason}: ${found.message}`);
      expect(found.field.reportId).toBe(brake.reportId);
      expect(found.inverted).toBe(brake.full < brake.rest);
      const lead = brake.reportId > 0 ? 1 : 0;
      const own = recording.moved.filter((report) => lead === 0 || report[0] === brake.reportId);
      expect(own.length).toBeGreaterThan(500);
      const read = compileField(found.field);
      const errors = own.map((report) => {
        const bits = report.subarray(lead);
        const counts = unpackField(bits, brake.bitOffset, brake.bitSize, brake.signed);
        const truth = (counts - brake.rest) / (brake.full - brake.rest);
        const value = read(report, 0, report.length)!;
        return Math.abs((value - found.restCounts) / (found.fullCounts - found.restCounts) - truth);
      });
      const tolerance = 0.001 + (2 + 4 * brake.noise) / Math.abs(brake.full - brake.rest);
      expect(Math.max(...errors)).toBeLessThanOrEqual(tolerance);
    });
});
