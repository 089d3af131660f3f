import { describe, expect, test } from 'vitest';
import { CARS, derivedIn, SHEETS } from './bundled-zones.ts';

/** The engine brakes hardly more or less over such a way. */
const SAME_PLACE_M = 3;

describe.each(SHEETS.filter(({ id }) => ['drovers-bowl', 'kiln-hairpin'].includes(id)))(
  'in $id',
  (sheet) => {
    test.each(CARS)('$id is braked by the gear that its downshifts make', (file) => {
      for (const derived of derivedIn(sheet, file)) {
        if (derived === null) continue;
        const { zone, corner } = derived;
        for (const { sM, gear } of zone.points) {
          const after = zone.downshifts.filter(({ atM }) => atM + SAME_PLACE_M < sM).length;
          const before = zone.downshifts.filter(({ atM }) => atM - SAME_PLACE_M < sM).length;
          const label = `${corner.variant} at ${sM}`;
          expect(gear, label).toBeLessThanOrEqual(corner.gears.approach - after);
          expect(gear, label).toBeGreaterThanOrEqual(corner.gears.approach - before);
        }
      }
    });
  },
);
