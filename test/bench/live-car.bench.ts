import { afterAll, bench, describe } from 'vitest';
import { driveLiveCar, startLiveCar } from '../../src/live/drive-live-car.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import { inputsOfRecord, NO_INPUTS } from '../../src/live/live-inputs.ts';
import { bundledZone, recordOfTarget } from '../live-car/bundled-zone.ts';

const zone = bundledZone('prototype', 'kiln-hairpin');
const record = recordOfTarget(zone);
const STEPS = driveRecord(zone, record).columns.timeS.length;
const BATCH_STEPS = 8;
/** In the middle of the braking, the samples of the next batch already there. */
const START_S = 1;
const midway = driveLiveCar(zone, startLiveCar(zone), inputsOfRecord(record), START_S);

/** The same number of midpoint steps on a right side that costs nothing. */
function plainSteps(steps: number): number {
  let v = 80;
  for (let i = 0; i < steps; i++) {
    const middle = v - (12.3 + 0.002 * v * v) * 0.0005;
    v -= (12.3 + 0.002 * middle * middle) * 0.001;
  }
  return v;
}

let sink = 0;

describe(`a zone of ${STEPS} steps`, () => {
  bench('floor: plain midpoint rule', () => {
    sink += plainSteps(STEPS);
  });

  bench('driveRecord', () => {
    sink += driveRecord(zone, record).end.speedMps;
  });
});

describe(`a batch of ${BATCH_STEPS} ms`, () => {
  bench('floor: plain midpoint rule', () => {
    sink += plainSteps(BATCH_STEPS);
  });

  bench('driveLiveCar', () => {
    sink += driveLiveCar(zone, midway, NO_INPUTS, START_S + BATCH_STEPS / 1000).speedMps;
  });
});

/** Reads the sums, so that the loops are not optimised away. */
afterAll(() => {
  if (!Number.isFinite(sink)) throw new Error(`the sums came to ${sink}`);
});
