import { expect, test } from 'vitest';
import { brakeStepLevel } from '../../../src/input/rig/brake-step-level.ts';
import { calibrationId } from '../../../src/input/rig/calibration-id.ts';
import { levelMap } from '../../../src/input/rig/level-map.ts';
import type { AxisAssignment, Rig } from '../../../src/input/rig/rig.ts';
import { rigInNewtons } from '../../../src/input/rig/rig-in-newtons.ts';
import { identity } from '../report-batches.ts';
import { calibration, WORD } from './calibration.ts';

// 0.25 N a count from 100 counts on: full scale at 2900 counts is 700 N
const LOAD = { newtonsPerCount: 0.25, zeroCounts: 100, loads: [], residualN: null };
const brake: AxisAssignment = {
  role: 'brake',
  device: identity(1),
  field: WORD,
  calibration: calibration(100, 2900, { sensor: 'force', load: LOAD }),
};
const throttle: AxisAssignment = { ...brake, role: 'throttle', calibration: calibration(0, 1000) };

function rigWith(one: AxisAssignment): Rig {
  return { axes: [throttle, one], buttons: [], wheelLockDeg: null, foot: 'left', footwear: '' };
}
const RIG = rigWith(brake);

function brakeOf({ axes }: Rig): AxisAssignment {
  return axes.find(({ role }) => role === 'brake')!;
}

/** Level at a force on that sensor. */
function levelAt(rig: Rig, newtons: number): number {
  return levelMap(brakeOf(rig).calibration, WORD)(100 + newtons / 0.25);
}

test('a level is the force over what level 1 stands for in the target', () => {
  const { rig, counts } = rigInNewtons(RIG, [{ fullScaleN: 1000, peakLevel: 0.7 }]);
  expect(counts).toEqual({ in: 'newtons', fullScaleN: 1000 });
  for (const newtons of [0, 30, 480, 700])
    expect(levelAt(rig, newtons)).toBeCloseTo(newtons / 1000, 12);
  expect(levelAt(rig, 800)).toBeCloseTo(0.7, 12); // the axis ends at the driver's full scale
  expect(brakeStepLevel(rig)).toBeCloseTo(0.25 / 1000, 12);
  expect(rig.axes[0]).toBe(throttle);
});

test('a full scale above the target’s reaches level 1 early and stays there', () => {
  const { rig } = rigInNewtons(RIG, [{ fullScaleN: 500, peakLevel: 1 }]);
  expect([250, 500, 600].map((newtons) => levelAt(rig, newtons))).toEqual([0.5, 1, 1]);
});

test('a dead zone at the end takes part: level 1 of the rig is where it begins', () => {
  const dead = rigWith({ ...brake, calibration: { ...brake.calibration, deadEnd: 0.5 } });
  // 350 N of 700 read as the driver's full scale
  const { rig, counts } = rigInNewtons(dead, [{ fullScaleN: 400, peakLevel: 0.8 }]);
  expect(counts.in).toBe('newtons');
  expect(levelAt(rig, 200)).toBeCloseTo(0.5, 12);
});

test('reps in newtons compare with each other only, and those without as before', () => {
  const id = calibrationId(RIG);
  const of = (fullScaleN: number): string =>
    calibrationId(rigInNewtons(RIG, [{ fullScaleN, peakLevel: 0.5 }]).rig);
  expect(new Set([id, of(1000), of(900)]).size).toBe(3);
  expect(of(700)).toBe(id);
});

test('what a target takes beyond the own full scale is told, and levels stay shares of that', () => {
  const { rig, counts } = rigInNewtons(RIG, [
    { fullScaleN: 1000, peakLevel: 0.5 },
    { fullScaleN: 1000, peakLevel: 0.8 },
  ]);
  expect(rig).toBe(RIG);
  expect(counts).toEqual({ in: 'own full scale', askedN: 800, ownN: 700 });
});

test.each([
  ['a target that stands for no force', RIG, [{ fullScaleN: null, peakLevel: 0.5 }]],
  [
    'targets of different forces',
    RIG,
    [
      { fullScaleN: 600, peakLevel: 0.5 },
      { fullScaleN: 700, peakLevel: 0.5 },
    ],
  ],
  [
    'one of them without',
    RIG,
    [
      { fullScaleN: 600, peakLevel: 0.5 },
      { fullScaleN: null, peakLevel: 0.5 },
    ],
  ],
  [
    'a sensor without known loads',
    rigWith({ ...brake, calibration: { ...brake.calibration, load: null } }),
    [{ fullScaleN: 600, peakLevel: 0.5 }],
  ],
  ['a rig without a brake', { ...RIG, axes: [throttle] }, [{ fullScaleN: 600, peakLevel: 0.5 }]],
])('%s: levels are shares of the own full scale', (_, rig, asked) => {
  expect(rigInNewtons(rig, asked)).toEqual({ rig, counts: { in: 'own full scale' } });
});
