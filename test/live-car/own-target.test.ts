import { describe, expect, test } from 'vitest';
import { buildCar } from '../../src/car/build-car.ts';
import { buildCorner, variantOfSheet } from '../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../src/corner/corner-sheet.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import { deriveTarget } from '../../src/target/derive/derive-target.ts';
import { CARS, SHEETS } from '../target/derive/bundled-zones.ts';
import { pointsOver, recordOf, WHOLE_RIG } from './rigs.ts';

const degrees = (rad: number) => (rad * 180) / Math.PI;

/** Bumps are no part of the curve: a driver eases over them. */
function driveOwnTarget(file: (typeof CARS)[number], sheet: CornerSheet) {
  const variant = variantOfSheet(sheet, 'race');
  const car = buildCar(file, variant.car);
  const derived = deriveTarget(car, { ...buildCorner(sheet, 'race'), bumps: [] });
  const controls = { ...WHOLE_RIG, throttle: false, paddles: false };
  const zone = liveZone({ derived, advice: null, controls, call: null });
  const { points, durationS, slowestM } = derived.zone;
  const level = pointsOver(points, (p) => Math.min(1, p.level));
  const run = driveRecord(
    zone,
    recordOf({
      // A sample is held over its step: that of the middle.
      brake: (t) => (t < 0 ? 0 : level(t + 0.0005)),
      steering: pointsOver(points, (p) => degrees(p.steeringRad)),
      endS: durationS + 0.5,
    }),
  );
  const { placeM, timeS, speedMps, frontUse, rearUse } = run.columns;
  const at = placeM.findIndex((sM) => sM >= slowestM);
  const from = timeS.findIndex((t) => t >= 0.4);
  const uses = frontUse.subarray(from, at).map((use, i) => Math.max(use, rearUse[from + i]!));
  const mean = uses.reduce((sum, use) => sum + use, 0) / uses.length;
  return {
    run,
    durationS,
    slowestMps: points.at(-1)?.speedMps ?? 0,
    reachedS: timeS[at] ?? Number.NaN,
    reachedMps: speedMps[at] ?? Number.NaN,
    use: mean / (derived.corner.gripShare || 1),
  };
}

/** Between two radii these two ask for the throttle, which is left alone here. */
const ASK_FOR_THROTTLE = ['twin-barrows', 'coil-bend'];
const corners = SHEETS.filter(({ id }) => !ASK_FOR_THROTTLE.includes(id));

/**
 * What is left is what a target leaves out: the brake takes hold only at 1.5 %; engine braking goes on off the brake, up to
 * what the tyres carry, and the prototype's motor is blended out with the pedal. It costs most in the light car, whose rear
 * axle is the limit over most of a zone. Measured, with a fifth or so to spare.
 */
const CLOSE = { time: 0.005, speed: 0.015, use: 0.02 };
const ALLOWED: Readonly<Record<string, typeof CLOSE>> = {
  prototype: { time: 0.01, speed: 0.04, use: 0.02 },
  'light-single-seater': { time: 0.005, speed: 0.045, use: 0.05 },
};

describe.each(CARS)('$id, foot and hands as its own target says', (file) => {
  const allowed = ALLOWED[file.id] ?? CLOSE;
  test.each(corners)('in $id it is that zone', (sheet) => {
    const { run, durationS, slowestMps, reachedS, reachedMps, use } = driveOwnTarget(file, sheet);
    expect(Math.abs(reachedS / durationS - 1)).toBeLessThan(allowed.time);
    expect(Math.abs(reachedMps / slowestMps - 1)).toBeLessThan(allowed.speed);
    expect(Math.abs(use - 1)).toBeLessThan(allowed.use);
    expect(run.end.events.filter(({ kind }) => kind === 'lock-up')).toEqual([]);
  });
});
