import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Rig } from '../../../../src/input/rig/rig.ts';
import { loadRig } from '../../../../src/input/rig/rig-file.ts';
import { setupRig } from '../../../../src/input/rig/setup/setup-rig.ts';
import type { SetupTerminal } from '../../../../src/input/rig/setup/setup-terminal.ts';
import type { RigDevice } from '../../../../src/input/rig-device.ts';
import { openVirtualSetup } from '../../../../src/input/virtual/open-virtual-setup.ts';
import { virtualRig } from '../../../../src/input/virtual/virtual-rig.ts';
import { NAMED_PEDALS, PACKED_WHEEL } from '../../../reference/descriptors.ts';
import { deviceOf, word } from '../../report-batches.ts';
import { presses, ScriptedSetup, type Step } from './scripted-setup.ts';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'short-'));
});
afterEach(() => rm(dir, { recursive: true }));

const PEDALS = deviceOf(1, 'test pedals', NAMED_PEDALS);
/** X in the lowest 14 bits of the report, 0 to 16383. */
const WHEEL = deviceOf(2, 'test wheel', PACKED_WHEEL);
const once = (rest: number, full: number): number[] => presses(rest, full).slice(0, 450);

/** Both devices in one moment: pedals of 0..10000, a wheel whose stops are 0 and 16383. */
const moment = (brake: number, throttle: number, x: number): NonNullable<Step['reports']> => [
  [0, [...word(throttle), ...word(brake), ...word(0)]],
  [1, [x & 255, x >> 8, 0, 0x80, 0, 255, 255, 0]],
];
const STRAIGHT = 8192;
const REST: Step = {
  question: /Touch nothing/,
  reports: Array.from({ length: 200 }, () => moment(200, 0, STRAIGHT)).flat(),
};
const BRAKE: Step = {
  question: /^Brake: press it once/,
  reports: once(200, 8200).flatMap((counts) => moment(counts, 0, STRAIGHT)),
};
const THROTTLE: Step = {
  question: /^Throttle: press it once/,
  reports: once(0, 9800).flatMap((counts) => moment(200, counts, STRAIGHT)),
};
const turn = (x: number): Step => ({
  question: /^Wheel: from straight ahead turn it to the left/,
  reports: once(STRAIGHT, x).flatMap((counts) => moment(200, 0, counts)),
});
const YES: Step = { question: /does this follow/ };
const LOCK: Step = { question: /How many degrees/ };

async function setUp(
  devices: readonly RigDevice[],
  steps: readonly Step[],
): Promise<ScriptedSetup> {
  const driver = new ScriptedSetup(devices, steps);
  const options = { source: driver.source, terminal: driver, dataDir: dir, known: null, loads: [] };
  await setupRig({ ...options, short: true });
  expect(driver.left).toEqual([]);
  return driver;
}

describe('a short set-up', { timeout: 30_000 }, () => {
  test('takes one press of the brake, one of the throttle and one turn, and saves a rig to drive', async () => {
    const driver = await setUp(
      [PEDALS, WHEEL],
      [REST, BRAKE, YES, THROTTLE, YES, turn(6000), LOCK, YES],
    );
    const rig = await loadRig(dir, [PEDALS, WHEEL]);
    const spans = rig?.axes.map(({ role, calibration: c }) => [role, c.restCounts, c.fullCounts]);
    // The left stop is the described end of the axis on the side to which it was turned.
    expect(spans).toEqual([
      ['brake', 200, 8200],
      ['throttle', 0, 9800],
      ['steering', STRAIGHT, 0],
    ]);
    expect(rig?.wheelLockDeg).toBe(900);
    expect(driver.said[0]).toBe('Listening to test pedals.');
    expect(driver.text).toContain('  brake     Brake of test pedals');
    expect(driver.text).toContain('`ebbline rig setup`, any time');
  });

  test('a wheel that counts up to the left has its left stop at the top', async () => {
    await setUp([PEDALS, WHEEL], [REST, BRAKE, YES, THROTTLE, YES, turn(12_000), LOCK, YES]);
    const steering = (await loadRig(dir))?.axes.find(({ role }) => role === 'steering');
    expect(steering?.calibration.fullCounts).toBe(16_383);
  });

  test('a wheel that rests beside the middle it describes is turned to both stops', async () => {
    const at = (x: number): NonNullable<Step['reports']> => moment(200, 0, x);
    const rest = { ...REST, reports: Array.from({ length: 200 }, () => at(10_000)).flat() };
    const press = (step: Step, axis: number): Step => ({
      ...step,
      reports: once(axis === 0 ? 200 : 0, 8200).flatMap((c) =>
        axis === 0 ? moment(c, 0, 10_000) : moment(200, c, 10_000),
      ),
    });
    const left = { ...turn(0), reports: once(10_000, 7000).flatMap(at) };
    const both = [
      { question: /straight ahead, then press Enter/, reports: rest.reports },
      { question: /left stop/, reports: once(10_000, 4000).flatMap(at) },
      { question: /right stop/, reports: once(10_000, 16_000).flatMap(at) },
    ];
    const steps = [rest, press(BRAKE, 0), YES, press(THROTTLE, 1), YES, left, ...both, LOCK, YES];
    const driver = await setUp([PEDALS, WHEEL], steps);
    expect(driver.text).toContain('Straight ahead is not half way between the stops');
    const steering = (await loadRig(dir))?.axes.find(({ role }) => role === 'steering');
    expect(steering?.calibration).toMatchObject({ restCounts: 10_000, fullCounts: 4000 });
  });

  test('does not ask for what is not there by its own word', async () => {
    await setUp([PEDALS], [REST, BRAKE, YES, THROTTLE, YES]);
    expect((await loadRig(dir))?.wheelLockDeg).toBeNull();
  });

  test('asks a device that says nothing of itself for everything, and for both stops', async () => {
    const mute = { ...WHEEL, descriptor: null };
    const both = [
      { question: /straight ahead, then press Enter/, reports: REST.reports! },
      { question: /left stop/, reports: once(STRAIGHT, 100).flatMap((x) => moment(200, 0, x)) },
      { question: /right stop/, reports: once(STRAIGHT, 16_200).flatMap((x) => moment(200, 0, x)) },
    ];
    await setUp([PEDALS, mute], [REST, BRAKE, YES, THROTTLE, YES, turn(3000), ...both, LOCK, YES]);
    const steering = (await loadRig(dir))?.axes.find(({ role }) => role === 'steering');
    expect(steering?.calibration).toMatchObject({ restCounts: STRAIGHT, fullCounts: 100 });
  });
});

test('on the virtual rig the simulated driver does it all, and nothing is kept', async () => {
  const said: string[] = [];
  const onlyEnter: SetupTerminal = {
    say: (text) => said.push(text),
    ask: async (question) => {
      said.push(question);
      // The reports at rest come by the clock.
      await new Promise((done) => setTimeout(done, 300));
      return '';
    },
    askLive: async (question, live) => {
      said.push(question, live());
      return '';
    },
  };
  const virtual = openVirtualSetup(onlyEnter, (ms) => new Promise((done) => setTimeout(done, ms)));
  const rig: Rig = await setupRig({
    ...virtual,
    dataDir: null,
    known: null,
    loads: [],
    short: true,
  });
  expect(await readdir(dir)).toEqual([]);
  const truth = virtualRig();
  expect(rig.axes.map(({ role }) => role)).toEqual(['brake', 'throttle', 'steering']);
  for (const { role, field, calibration } of rig.axes) {
    const real = truth.axes.find((axis) => axis.role === role)!;
    expect(field).toEqual(real.field);
    const span = Math.abs(real.calibration.fullCounts - real.calibration.restCounts);
    for (const end of ['restCounts', 'fullCounts'] as const)
      expect(Math.abs(calibration[end] - real.calibration[end])).toBeLessThan(0.01 * span);
  }
  expect(said.at(-1)).toBe('Tried out: nothing was saved.');
}, 60_000);
