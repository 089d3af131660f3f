import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { BUTTON_JOBS } from '../../../../src/drill/learned-buttons.ts';
import { parseLoads } from '../../../../src/input/rig/parse-load.ts';
import type { AxisAssignment, AxisRole, Rig } from '../../../../src/input/rig/rig.ts';
import { loadRig } from '../../../../src/input/rig/rig-file.ts';
import { setupRig } from '../../../../src/input/rig/setup/setup-rig.ts';
import type { RigDevice } from '../../../../src/input/rig-device.ts';
import { NAMED_PEDALS, PACKED_WHEEL } from '../../../reference/descriptors.ts';
import { deviceOf, word } from '../../report-batches.ts';
import { calibration } from '../calibration.ts';
import { presses, ScriptedSetup, type Step } from './scripted-setup.ts';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'setup-'));
});
afterEach(() => rm(dir, { recursive: true }));

type Reports = NonNullable<Step['reports']>;

/** Accelerator, brake, clutch as words of 0..10000. */
const PEDALS = deviceOf(1, 'test pedals', NAMED_PEDALS);
const MUTE_PEDALS = deviceOf(1, 'mute pedals', null);
const pedals = (throttle: number, brake: number, clutch: number): Reports[number] => [
  0,
  [...word(throttle), ...word(brake), ...word(clutch)],
];
const BRAKE = (full: number): Reports =>
  presses(200, full).map((counts) => pedals(0, counts, 10000));
const THROTTLE = presses(0, 9800).map((counts) => pedals(counts, 200, 10000));
/** Counts down. */
const CLUTCH = presses(10000, 450).map((counts) => pedals(0, 200, counts));
const REST = Array.from({ length: 400 }, () => pedals(0, 200, 10000));

/** X in 14 bits, then 14 buttons and a hat in one word; a byte of padding, Y, Rz and another byte of padding. */
const WHEEL = deviceOf(2, 'test wheel', PACKED_WHEEL);
const wheel = (x: number, buttons = 0): Reports[number] => [
  1,
  [
    x & 255,
    (x >> 8) | ((buttons & 3) << 6),
    (buttons >> 2) & 255,
    ((buttons >> 10) & 15) | 0x80,
    0,
    255,
    255,
    0,
  ],
];
const STRAIGHT = Array.from({ length: 100 }, () => wheel(8192));
const turnTo = (x: number): Reports => presses(8192, x).map((counts) => wheel(counts));
const press = (button: number): Reports =>
  Array.from({ length: 300 }, (_, i) =>
    wheel(8192, i % 100 < 50 && i > 50 ? 1 << (button - 1) : 0),
  );

/** The wheel as the only device, with its Rz. */
const alone = (x: number, buttons: number, rz: number): Reports[number] => {
  const [, bytes] = wheel(x, buttons);
  return [0, [...bytes.slice(0, 6), rz, 0]];
};
const STRAIGHT_ALONE = Array.from({ length: 100 }, () => alone(8192, 0, 255));
const pressAlone = (button: number): Reports =>
  Array.from({ length: 300 }, (_, i) =>
    alone(8192, i % 100 < 50 && i > 50 ? 1 << (button - 1) : 0, 255),
  );

const START: readonly Step[] = [
  { question: /Which foot/, answer: 'l' },
  { question: /Footwear/, answer: 'race shoe' },
  { question: /Touch nothing/, reports: REST },
];
const YES = { question: /does this follow your/, answer: 'y' };
const PEDAL_STEPS: readonly Step[] = [
  { question: /^Brake: press/, reports: BRAKE(8200) },
  YES,
  { question: /What does the brake measure/, answer: 'f' },
  { question: /^Throttle/, reports: THROTTLE },
  YES,
  { question: /^Clutch/, reports: CLUTCH },
  YES,
];
const NO_WHEEL: Step = { question: /^Wheel/, answer: 's' };
const NO_BUTTONS: readonly Step[] = BUTTON_JOBS.map(() => ({ question: /Enter alone/ }));

async function setUp(
  devices: readonly RigDevice[],
  steps: readonly Step[],
  known: Rig | null = null,
  loads = '',
): Promise<{ readonly rig: Rig; readonly driver: ScriptedSetup }> {
  const driver = new ScriptedSetup(devices, steps);
  const rig = await setupRig({
    source: driver.source,
    terminal: driver,
    dataDir: dir,
    known,
    loads: loads === '' ? [] : parseLoads(loads),
    extent: 'whole',
  });
  expect(driver.left).toEqual([]);
  expect(driver.closed).toBe(1);
  return { rig, driver };
}

const spans = (rig: Rig): Partial<Record<AxisRole, readonly [number, number]>> =>
  Object.fromEntries(
    rig.axes.map(({ role, calibration: c }) => [role, [c.restCounts, c.fullCounts]]),
  );
const bits = (rig: Rig): Partial<Record<AxisRole, readonly [number, number]>> =>
  Object.fromEntries(rig.axes.map(({ role, field: f }) => [role, [f.bitOffset, f.bitSize]]));

describe('setting up', { timeout: 30_000 }, () => {
  test('finds pedals by pressing them and saves them with foot and footwear', async () => {
    const { rig, driver } = await setUp(
      [PEDALS],
      [...START, ...PEDAL_STEPS, NO_WHEEL, ...NO_BUTTONS],
    );
    expect(spans(rig)).toEqual({ brake: [200, 8200], throttle: [0, 9800], clutch: [10000, 450] });
    expect(bits(rig)).toEqual({ brake: [16, 16], throttle: [0, 16], clutch: [32, 16] });
    expect(rig).toMatchObject({ foot: 'left', footwear: 'race shoe', wheelLockDeg: null });
    expect(rig.axes[0]?.calibration.sensor).toBe('force');
    expect(driver.text).toContain('  brake     Brake of test pedals');
    expect(driver.text).toContain('Found Brake of test pedals, 16 bits, rest 200, full 8200');
    expect(driver.live[0]).toMatch(/^brake \[\.{40}\] 0\.0 %$/);
    expect(await loadRig(dir)).toEqual(rig);
  });

  test('works without a descriptor', async () => {
    const { rig } = await setUp([MUTE_PEDALS], [...START, ...PEDAL_STEPS, NO_WHEEL, ...NO_BUTTONS]);
    expect(spans(rig)).toEqual({ brake: [200, 8200], throttle: [0, 9800], clutch: [10000, 450] });
    expect(bits(rig).brake?.[0]).toBe(16);
  });

  test('believes the foot more than the usage', async () => {
    const { rig } = await setUp(
      [PEDALS],
      [
        ...START,
        { question: /^Brake: press/, reports: THROTTLE },
        YES,
        { question: /What does the brake measure/, answer: 'travel' },
        { question: /^Throttle/, answer: 's' },
        { question: /^Clutch/, answer: 's' },
        NO_WHEEL,
        ...NO_BUTTONS,
      ],
    );
    expect(bits(rig)).toEqual({ brake: [0, 16] });
  });

  test('finds the wheel, asks for its lock, and finds paddles', async () => {
    const { rig, driver } = await setUp(
      [PEDALS, WHEEL],
      [
        ...START,
        ...PEDAL_STEPS.slice(0, 3),
        { question: /^Throttle/, answer: 's' },
        { question: /^Clutch/, answer: 's' },
        { question: /^Wheel/, reports: STRAIGHT },
        { question: /left stop/, reports: turnTo(100) },
        { question: /right stop/, reports: turnTo(16200) },
        { question: /How many degrees/, answer: 'lots' },
        { question: /How many degrees/, answer: '540' },
        YES,
        { question: /^Downshift/, reports: press(6) },
        { question: /^Upshift/, reports: press(5) },
        ...NO_BUTTONS.slice(2),
      ],
    );
    expect(spans(rig).steering).toEqual([8192, 100]);
    expect(bits(rig).steering).toEqual([0, 14]);
    expect(rig.wheelLockDeg).toBe(540);
    expect(
      rig.buttons.map(({ action, control, field }) => [action, control, field.bitOffset]),
    ).toEqual([
      ['downshift', 'button 6', 19],
      ['upshift', 'button 5', 18],
    ]);
    expect(driver.live.at(-1)).toMatch(/^steering \[\.{20}o\.{20}\] 0 deg$/);
  });

  test('two pedals on one axis rest in the middle', async () => {
    const one = deviceOf(1, 'old pedals', null);
    const axis = (counts: number): Reports[number] => [0, [...word(counts), 0]];
    const { rig, driver } = await setUp(
      [one],
      [
        ...START.slice(0, 2),
        { question: /Touch nothing/, reports: Array.from({ length: 100 }, () => axis(32768)) },
        { question: /^Brake: press/, reports: presses(32768, 1000).map(axis) },
        YES,
        { question: /What does the brake measure/, answer: 'travel' },
        { question: /^Throttle/, reports: presses(32768, 64000).map(axis) },
        YES,
        { question: /^Clutch/, answer: 's' },
        NO_WHEEL,
        ...NO_BUTTONS,
      ],
    );
    expect(spans(rig)).toEqual({ brake: [32768, 1000], throttle: [32768, 64000] });
    expect(bits(rig)).toEqual({ brake: [0, 16], throttle: [0, 16] });
    expect(driver.text).toContain('cancel out');
  });

  test('a pedal that shares the axis of one kept from before goes the other way', async () => {
    const one = deviceOf(1, 'old pedals', null);
    const axis = (counts: number): Reports[number] => [0, [...word(counts), 0]];
    const brake: AxisAssignment = {
      role: 'brake',
      device: one.identity,
      field: { reportId: 0, bitOffset: 0, bitSize: 16, signed: false },
      calibration: calibration(32768, 1000),
    };
    const known: Rig = {
      axes: [brake],
      buttons: [],
      wheelLockDeg: null,
      foot: 'left',
      footwear: '',
    };
    const { rig, driver } = await setUp(
      [one],
      [
        ...START.slice(0, 2),
        { question: /Touch nothing/, reports: Array.from({ length: 100 }, () => axis(32768)) },
        { question: /Keep it/, answer: 'y' },
        { question: /What does the brake measure/ },
        { question: /^Throttle/, reports: presses(32768, 1000).map(axis) },
        { question: /^Throttle/, reports: presses(32768, 64000).map(axis) },
        YES,
        { question: /^Clutch/, answer: 's' },
        NO_WHEEL,
        ...NO_BUTTONS,
      ],
      known,
    );
    expect(driver.text).toContain('That is the brake. Press the throttle alone.');
    expect(driver.text).toContain('cancel out');
    expect(spans(rig)).toEqual({ brake: [32768, 1000], throttle: [32768, 64000] });
  });

  test('a button that is given a second job loses its first', async () => {
    const { rig } = await setUp(
      [WHEEL],
      [
        ...START.slice(0, 2),
        { question: /Touch nothing/, reports: STRAIGHT_ALONE },
        { question: /^Brake: press/, reports: presses(255, 10).map((rz) => alone(8192, 0, rz)) },
        YES,
        { question: /What does the brake measure/ },
        { question: /^Throttle/, answer: 's' },
        { question: /^Clutch/, answer: 's' },
        NO_WHEEL,
        { question: /^Downshift/, reports: pressAlone(6) },
        { question: /^Upshift/, reports: pressAlone(6) },
        ...NO_BUTTONS.slice(2),
      ],
    );
    expect(rig.buttons.map(({ action, control }) => [action, control])).toEqual([
      ['upshift', 'button 6'],
    ]);
  });

  test('asks again until it can tell, and until the driver is content', async () => {
    const { rig, driver } = await setUp(
      [PEDALS],
      [
        ...START,
        { question: /^Brake: press/, reports: REST },
        { question: /^Brake: press/, reports: BRAKE(230) },
        { question: /^Brake: press/, reports: BRAKE(5000) },
        { question: /does this follow/, answer: 'n' },
        ...PEDAL_STEPS.slice(0, 3),
        { question: /^Throttle/, reports: BRAKE(8200) },
        { question: /^Throttle/, answer: 's' },
        { question: /^Clutch/, answer: 's' },
        NO_WHEEL,
        ...NO_BUTTONS,
      ],
    );
    expect(spans(rig)).toEqual({ brake: [200, 8200] });
    expect(driver.text).toContain('30 counts, at least 67');
    expect(driver.text).toContain('Move the other one.');
  });
});

describe('stopping and going on', { timeout: 30_000 }, () => {
  test('an axis on a device that is not here is kept, a known button too', async () => {
    const wheelRig: Rig = {
      axes: [
        {
          role: 'steering',
          device: WHEEL.identity,
          field: { reportId: 0, bitOffset: 0, bitSize: 14, signed: false },
          calibration: {
            restCounts: 8192,
            fullCounts: 0,
            deadStart: 0,
            deadEnd: 0,
            sensor: 'unknown',
            load: null,
          },
        },
      ],
      buttons: [
        {
          device: WHEEL.identity,
          field: { reportId: 0, bitOffset: 19, bitSize: 1, signed: false },
          pressedCounts: 1,
          control: 'button 6',
          action: 'downshift',
        },
      ],
      wheelLockDeg: 540,
      foot: 'left',
      footwear: '',
    };
    const { rig, driver } = await setUp(
      [PEDALS],
      [...START, ...PEDAL_STEPS, ...NO_BUTTONS],
      wheelRig,
    );
    expect(rig.axes).toContainEqual(wheelRig.axes[0]);
    expect(rig.buttons).toEqual(wheelRig.buttons);
    expect(rig.wheelLockDeg).toBe(540);
    expect(driver.text).toContain('f055:0002 (not connected)');
  });

  test('a source that fails ends it, and is closed', async () => {
    const driver = new ScriptedSetup([PEDALS], START);
    const done = setupRig({
      source: driver.source,
      terminal: driver,
      dataDir: dir,
      known: null,
      loads: [],
      extent: 'whole',
    });
    driver.fail(new Error('device gone'));
    await expect(done).rejects.toThrow('device gone');
    expect(driver.closed).toBe(1);
  });
});

describe('known loads', { timeout: 30_000 }, () => {
  const resting = (counts: number): Reports =>
    Array.from({ length: 800 }, (_, i) => pedals(0, i < 200 ? 200 : counts + (i % 3) - 1, 10000));
  const END = [
    { question: /^Throttle/, answer: 's' },
    { question: /^Clutch/, answer: 's' },
    NO_WHEEL,
    ...NO_BUTTONS,
  ];
  const put = (text: string, counts: number): Step => ({
    question: new RegExp(`Put ${text}`),
    reports: resting(counts),
  });

  test('are fitted to newtons', async () => {
    const { rig, driver } = await setUp(
      [PEDALS],
      [
        ...START,
        ...PEDAL_STEPS.slice(0, 3),
        put('100N', 1200),
        put('200N', 2200),
        put('300N', 3200),
        ...END,
      ],
      null,
      '100N,200N,300N',
    );
    const { load } = rig.axes[0]!.calibration;
    expect(load?.newtonsPerCount).toBeCloseTo(0.1, 9);
    expect(load?.zeroCounts).toBeCloseTo(200, 6);
    expect(load?.residualN).toBeCloseTo(0, 6);
    expect(driver.text).toContain('100 % stands for 800 N; the loads lie 0.0 N off the line');
    expect(await loadRig(dir)).toEqual(rig);
  });

  test('that make no sense are told and measured again', async () => {
    const { driver } = await setUp(
      [PEDALS],
      [
        ...START,
        ...PEDAL_STEPS.slice(0, 3),
        put('10kgf', 1200),
        put('20kgf', 1200),
        { question: /Measure the loads again/, answer: 'y' },
        put('10kgf', 1200),
        // A device that reports on change says nothing more: the load of the last report still lies on it.
        { question: /Put 20kgf/, reports: [pedals(0, 2200, 10000)] },
        ...END,
      ],
      null,
      '10kgf,20kgf',
    );
    expect(driver.text).toContain('more load must move the counts on');
    expect(driver.text).toContain('two loads leave the line unchecked');
  });

  test('say nothing of a pedal that measures travel', async () => {
    const steps = [...START, ...PEDAL_STEPS.slice(0, 2), { question: /measure/, answer: 't' }];
    await expect(setUp([PEDALS], steps, null, '10kgf,20kgf')).rejects.toThrow('measure force');
  });

  test('outlast a new full scale of the same sensor', async () => {
    const first = await setUp(
      [PEDALS],
      [...START, ...PEDAL_STEPS.slice(0, 3), put('100N', 1200), put('200N', 2200), ...END],
      null,
      '100N,200N',
    );
    const again = await setUp(
      [PEDALS],
      [
        ...START,
        { question: /Keep it/, answer: 'n' },
        { question: /^Brake: press/, reports: BRAKE(6000) },
        YES,
        { question: /measure.*\[force\]/ },
        ...END,
      ],
      first.rig,
    );
    expect(spans(again.rig).brake).toEqual([200, 6000]);
    expect(again.rig.axes[0]?.calibration.load).toEqual(first.rig.axes[0]?.calibration.load);
  });
});
