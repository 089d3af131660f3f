import { expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveColumns } from '../../src/live/live-run.ts';
import { expectRelative } from '../close-to.ts';
import { recordOf } from './rigs.ts';
import { STICKY, straightZone } from './straight.ts';

/** Engine braking that does not depend on speed, rolling resistance and a slope, so that every part takes its share. */
const CAR: Car = {
  ...STICKY,
  rollingResistance: 0.015,
  engine: { ...STICKY.engine, brakingTorque: [{ rpm: 1000, torqueNm: 60 }] },
};
const gears = { approach: 4, slowest: 4, shiftsAtM: null };
const G = 9.80665;

/** Work of a force over the part of the run after the cue, J: Simpson's rule on power. */
function workJ({ timeS, speedMps }: LiveColumns, forceN: (speedMps: number) => number): number {
  const from = timeS.findIndex((t) => t >= 0.1);
  const last = timeS.length - 1 - ((timeS.length - 1 - from) % 2);
  let sum = 0;
  for (let i = from; i <= last; i++) {
    const weight = i === from || i === last ? 1 : (i - from) % 2 === 1 ? 4 : 2;
    sum += weight * forceN(speedMps[i]!) * speedMps[i]!;
  }
  return (sum * 0.001) / 3;
}

// The kinetic energy that leaves the car is the work of brakes, drag, engine, rolling resistance and hill.
test('the energy balance closes to a millionth', () => {
  const zone = straightZone(CAR, 70, { gears, slopeAt: () => 0.04 });
  const brake = (t: number) => (t < 0 ? 0 : 0.3 + 0.1 * Math.sin(4 * t));
  const record = recordOf({ brake, endS: 3 });
  const run = driveRecord(zone, record);
  const before = driveRecord(zone, { ...record, endS: 0.0995 });
  const { columns } = run;
  const last = columns.timeS.length - 1 - ((columns.timeS.length - 1 - 3100) % 2);
  const upTo = driveRecord(zone, { ...record, endS: columns.timeS[last]! - 0.0005 });
  expect([run.end.front.slip, run.end.rear.slip]).toEqual([0, 0]);
  const kinetic = 0.5 * 1250 * (columns.speedMps[3100]! ** 2 - columns.speedMps[last]! ** 2);
  const brakes =
    upTo.end.workJ.front + upTo.end.workJ.rear - before.end.workJ.front - before.end.workJ.rear;
  const others = workJ(columns, (v) => {
    const drag = 0.5 * 1.2 * v * v;
    const engine = (60 * 1.15 * 3.4) / 0.33;
    const rolling = 0.015 * (1250 * G + 0.5 * 1.2 * 3 * v * v);
    return drag + engine + rolling + 1250 * G * 0.04;
  });
  expect(upTo.end.step).toBe(last);
  expect(before.end.step).toBe(3100);
  expectRelative(brakes + others, kinetic, 1e-6);
});
