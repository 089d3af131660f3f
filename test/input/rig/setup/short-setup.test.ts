import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Rig } from '../../../../src/input/rig/rig.ts';
import { loadRig } from '../../../../src/input/rig/rig-file.ts';
import { setupRig } from '../../../../src/input/rig/setup/setup-rig.ts';
import type { SetupTerminal } from '../../../../src/input/rig/setup/setup-terminal.ts';
import type { RigDevice } from '../../../../src/input/rig-device.ts';
import { openVirtualSetup } from '../../../../src/input/virtual/open-virtual-setup.ts';
import { virtualRig } from '../../../../src/input/virtual/virtual-rig.ts';
import { NAMED_PEDALS, PACKED_WHEEL } from '../../../reference/descriptors.ts';
import { deviceOf, word } from '../../report-batches.ts';
import { RacingClock } from '../../virtual/racing-clock.ts';
import { presses, ScriptedSetup, type Step } from './scripted-setup.ts';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'short-'));
});
afterEach(() => rm(dir, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

const PEDALS = deviceOf(1, 'test pedals', NAMED_PEDALS);
/** X in the lowest 14 bits of the report, 0 to 16383. */
const WHEEL = deviceOf(2, 'test wheel', PACKED_WHEEL);
const once = (rest: number, full: number): number[] => presses(rest, full).slice(0, 450);

/** Both devices in one moment: pedals of 0..10000, a wheel whose stops are 0 and 16383. */
const moment = (
  brake: number,
  throttle: number,
  x: number,
  button = 0,
): NonNullable<Step['reports']> => {
  // X has 14 bits, the buttons the next 14 from the top of its second byte on.
  const bits = button === 0 ? 0 : 2 ** (13 + button);
  const [low, middle] = [x | (bits & 0xffff), 0x8000 | (bits >>> 16)];
  return [
    [0, [...word(throttle), ...word(brake), ...word(0)]],
    [1, [low & 255, low >> 8, middle & 255, middle >> 8, 0, 255, 255, 0]],
  ];
};
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
/** Presses of buttons of the wheel, one after the other, 50 ms each. */
const press = (question: RegExp, ...buttons: number[]): Step => ({
  question,
  reports: buttons.flatMap((button) =>
    Array.from({ length: 150 }, (_, i) =>
      moment(200, 0, STRAIGHT, i > 50 && i < 100 ? button : 0),
    ).flat(),
  ),
});
const START = /^Press the button to start a rep/;
const REPEAT = /^Press the button to repeat/;
const PAUSE = /^Press the button to pause/;
const NO_BUTTON: Step = { question: START };
const LOCK: Step = { question: /How many degrees/ };

async function setUp(
  devices: readonly RigDevice[],
  steps: readonly Step[],
  known: Rig | null = null,
): Promise<ScriptedSetup> {
  const driver = new ScriptedSetup(devices, steps);
  const options = { source: driver.source, terminal: driver, dataDir: dir, known, loads: [] };
  await setupRig({ ...options, extent: 'short' });
  expect(driver.left).toEqual([]);
  return driver;
}

describe('a short set-up', { timeout: 30_000 }, () => {
  test('takes one press of the brake, one of the throttle and one turn, and saves a rig to drive', async () => {
    const driver = await setUp(
      [PEDALS, WHEEL],
      [REST, BRAKE, YES, THROTTLE, YES, turn(6000), LOCK, YES, NO_BUTTON],
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
    expect(rig?.buttons).toEqual([]);
    expect(driver.text).toContain('Any time: `ebbline rig setup --buttons`');
  });

  const MOVED = [REST, BRAKE, YES, THROTTLE, YES, turn(6000), LOCK, YES];
  const jobs = async (): Promise<unknown[]> =>
    (await loadRig(dir))!.buttons.map(({ action, control, pressedCounts }) => {
      return [action, control, pressedCounts];
    });

  test('learns a button by one press, without Enter, and those after it', async () => {
    const buttons = [press(START, 4), press(REPEAT, 5), press(PAUSE, 7)];
    const driver = await setUp([PEDALS, WHEEL], [...MOVED, ...buttons]);
    expect(await jobs()).toEqual([
      ['next', 'button 4', 1],
      ['repeat', 'button 5', 1],
      ['pause', 'button 7', 1],
    ]);
    expect(driver.overs).toEqual([true, true, true]);
  });

  test('a button that has a job keeps it, however often it is pressed', async () => {
    const driver = await setUp([PEDALS, WHEEL], [...MOVED, press(START, 4), press(REPEAT, 4, 4)]);
    expect(await jobs()).toEqual([['next', 'button 4', 1]]);
    expect(driver.overs).toEqual([true, false]);
  });

  test('two at once teach nothing, and it says so', async () => {
    const driver = await setUp([PEDALS, WHEEL], [...MOVED, press(START, 4, 6)]);
    expect(await jobs()).toEqual([]);
    expect(driver.text).toContain('More than one bit changed.');
  });

  test('asks for no button again that is known on a wheel that is here', async () => {
    await setUp([PEDALS, WHEEL], [...MOVED, press(START, 4), { question: REPEAT }]);
    const KEEP: Step = { question: /Keep it\?/ };
    const known = await loadRig(dir, [PEDALS, WHEEL]);
    await setUp([PEDALS, WHEEL], [REST, KEEP, KEEP, KEEP], known);
    expect(await jobs()).toEqual([['next', 'button 4', 1]]);
  });

  test('a wheel that counts up to the left has its left stop at the top', async () => {
    await setUp(
      [PEDALS, WHEEL],
      [REST, BRAKE, YES, THROTTLE, YES, turn(12_000), LOCK, YES, NO_BUTTON],
    );
    const steering = (await loadRig(dir))?.axes.find(({ role }) => role === 'steering');
    expect(steering?.calibration.fullCounts).toBe(16_383);
  });

  test('a wheel that rests beside the middle it describes is turned to both stops', async () => {
    const at = (x: number): NonNullable<Step['reports']> => moment(200, 0, x);
    const rest = { ...REST, reports: Array.from({ length: 200 }, () => at(10_000)).flat() };
    const pressed = (step: Step, axis: number): Step => ({
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
    const steps = [
      rest,
      pressed(BRAKE, 0),
      YES,
      pressed(THROTTLE, 1),
      YES,
      left,
      ...both,
      LOCK,
      YES,
      NO_BUTTON,
    ];
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
    await setUp(
      [PEDALS, mute],
      [REST, BRAKE, YES, THROTTLE, YES, turn(3000), ...both, LOCK, YES, NO_BUTTON],
    );
    const steering = (await loadRig(dir))?.axes.find(({ role }) => role === 'steering');
    expect(steering?.calibration).toMatchObject({ restCounts: STRAIGHT, fullCounts: 100 });
  });
});

test('on the virtual rig the simulated driver does it all, and nothing is kept', async () => {
  const clock = new RacingClock();
  vi.spyOn(performance, 'now').mockImplementation(() => clock.nowUs() / 1000);
  const said: string[] = [];
  const onlyEnter: SetupTerminal = {
    say: (text) => said.push(text),
    ask: async (question) => {
      said.push(question);
      // The reports at rest come by the clock.
      await clock.wait(300);
      return '';
    },
    askLive: async (question, live) => {
      said.push(question, live());
      return '';
    },
    askUntil: async (question, isOver) => {
      said.push(question);
      while (!isOver()) await clock.wait(100);
      return null;
    },
  };
  const virtual = openVirtualSetup(onlyEnter, clock);
  const rig: Rig = await setupRig({
    ...virtual,
    dataDir: null,
    known: null,
    loads: [],
    extent: 'short',
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
  expect(rig.buttons.map(({ action, control }) => [action, control])).toEqual([
    ['next', 'button 4'],
  ]);
  expect(said.at(-1)).toBe('Tried out: nothing was saved.');
}, 60_000);
