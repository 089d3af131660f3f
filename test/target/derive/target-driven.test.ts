import { describe, expect, test } from 'vitest';
import { buildCar } from '../../../src/car/build-car.ts';
import { buildCorner } from '../../../src/corner/build-corner.ts';
import { liveModel } from '../../../src/live/live-model.ts';
import { newRates, ratesAt } from '../../../src/live/motion-rates.ts';
import { solveZone } from '../../../src/target/derive/derive-zone.ts';
import type { ZonePoint } from '../../../src/target/derive/zone-point.ts';
import { CARS, SHEETS } from './bundled-zones.ts';

/** Two formulations of one car: what the target says of a place, and what the live car does there on the target's level. */
describe.each(CARS.map((file) => ({ id: file.id, file })))('$id on its own target', ({ file }) => {
  const sheet = SHEETS.find(({ id }) => id === 'kiln-hairpin');
  if (sheet === undefined) throw new Error('kiln-hairpin');
  // Bumps are no part of the curve.
  const corner = { ...buildCorner(sheet, null), bumps: [] };
  const car = buildCar(file, sheet.variants[0]?.car);
  const model = liveModel(car, corner);
  const braking = solveZone(car, corner).points.filter(
    ({ level, limiter }) => level > 0.02 && !['foot', 'load', 'corner'].includes(limiter),
  );

  function slowing({ sM, speedMps, level, gear, lateLoadN, limiter }: ZonePoint): {
    readonly decelerationMps2: number;
    readonly use: number;
  } {
    const rates = newRates();
    const asked = {
      level,
      throttle: 0,
      clutch: 0,
      steeringRad: null,
      engineGives: false,
      frontThrough: 1,
      rearThrough: 1,
    };
    const at = {
      sM,
      speedMps,
      transferN: 0,
      frontSlip: 0,
      rearSlip: 0,
      frontWorkJ: 0,
      rearWorkJ: 0,
    };
    // Load settles with the forces: a few rounds of the first-order lag's own rest. Of a release some of it is late.
    const late = limiter === 'rear axle' ? Math.max(0, lateLoadN) : 0;
    for (let round = 0; round < 60; round++) {
      ratesAt(model, { gear, shift: null, rearUse: 0 }, asked, at, rates);
      at.transferN += rates.transferN / model.pitchRate + late;
    }
    ratesAt(model, { gear, shift: null, rearUse: 0 }, asked, at, rates);
    return { decelerationMps2: -rates.speedMps, use: Math.max(rates.frontUse, rates.rearUse) };
  }

  test('slows as much and uses all of its grip, no more', () => {
    expect(braking.length).toBeGreaterThan(30);
    for (const point of braking) {
      const { decelerationMps2, use } = slowing(point);
      const label = `${point.sM} m, ${point.limiter}`;
      expect(Math.abs(decelerationMps2 + point.accelXMps2), label).toBeLessThan(0.02);
      expect(Math.abs(use - corner.gripShare), label).toBeLessThan(0.005);
    }
  });
});
