import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { rigSetup } from '../../src/commands/rig-setup.ts';
import { BUTTON_JOBS } from '../../src/drill/learned-buttons.ts';
import type { Rig } from '../../src/input/rig/rig.ts';
import { loadRig, saveRig } from '../../src/input/rig/rig-file.ts';
import { deviceOf } from '../input/report-batches.ts';
import { calibration, WORD } from '../input/rig/calibration.ts';
import { ScriptedSetup } from '../input/rig/setup/scripted-setup.ts';
import { NAMED_PEDALS } from '../reference/descriptors.ts';
import { fakeContext } from './fake-context.ts';
import { runCommand } from './run-command.ts';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'rig-setup-'));
});
afterEach(() => rm(dir, { recursive: true }));

const PEDALS = deviceOf(1, 'test pedals', NAMED_PEDALS);

test('shows the caution once, offers what is known and saves', async () => {
  const rig = {
    axes: [
      {
        role: 'brake' as const,
        device: PEDALS.identity,
        field: { ...WORD, bitOffset: 16 },
        calibration: calibration(0, 9000),
      },
    ],
    buttons: [],
    wheelLockDeg: null,
    foot: 'left' as const,
    footwear: 'boot',
  };
  await saveRig(dir, rig);
  const driver = new ScriptedSetup(
    [PEDALS],
    [
      { question: /Which foot/, answer: 'right' },
      { question: /Footwear/ },
      { question: /Touch nothing/ },
      { question: /Keep it/, answer: 'y' },
      { question: /What does the brake measure/, answer: 'force' },
      { question: /Throttle/, answer: 's' },
      { question: /Clutch/, answer: 's' },
      { question: /Wheel/, answer: 's' },
      ...BUTTON_JOBS.map(() => ({ question: /Enter alone/ })),
    ],
  );
  const input = { positionals: [], values: {} };
  expect(await rigSetup(input, fakeContext(dir), driver, async () => driver.source)).toBe(0);
  expect(driver.said.filter((line) => line.includes('stop at pain'))).toHaveLength(1);
  expect(driver.said[0]).toContain('stop at pain');
  const [brake] = rig.axes;
  const axes = [{ ...brake, calibration: { ...brake!.calibration, sensor: 'force' } }];
  expect(await loadRig(dir)).toEqual({ ...rig, axes, foot: 'right' });
  expect(driver.closed).toBe(1);
});

test('learns the buttons alone for a rig that is there, and refuses without one', async () => {
  const input = { positionals: [], values: { buttons: true } };
  const script = [
    { question: /Touch nothing/ },
    ...BUTTON_JOBS.map(([, job]) => ({ question: new RegExp(`^${job}: Enter alone`) })),
  ];
  const alone = new ScriptedSetup([PEDALS], script);
  await expect(
    rigSetup(input, fakeContext(dir), alone, async () => alone.source),
  ).rejects.toMatchObject({ where: '--buttons' });
  expect(alone.closed).toBe(1);
  const brake = {
    role: 'brake' as const,
    device: PEDALS.identity,
    field: { ...WORD, bitOffset: 16 },
    calibration: calibration(0, 9000),
  };
  const rig = { axes: [brake], buttons: [], wheelLockDeg: null, foot: 'left', footwear: '' };
  await saveRig(dir, rig as Rig);
  const driver = new ScriptedSetup([PEDALS], script);
  expect(await rigSetup(input, fakeContext(dir), driver, async () => driver.source)).toBe(0);
  expect(driver.left).toEqual([]);
  expect(await loadRig(dir)).toEqual(rig);
});

test.each([
  ['--buttons', '--short'],
  ['--buttons', '--loads=10kgf'],
  ['--buttons', '--restart'],
  ['--short', '--loads=10kgf'],
  ['--short', '--restart'],
])('refuses %s with %s', async (one, other) => {
  const { code, stderr } = await runCommand(['rig', 'setup', one, other, '--data-dir', dir]);
  expect(stderr).toContain(`${one}: ${one} beside ${other.split('=')[0]} is not possible here`);
  expect(code).toBe(2);
});

test('refuses loads without units before anything is opened', async () => {
  const input = { positionals: [], values: { loads: '10,20' } };
  const driver = new ScriptedSetup([PEDALS], []);
  const open = async () => {
    throw new Error('opened');
  };
  await expect(rigSetup(input, fakeContext(dir), driver, open)).rejects.toMatchObject({
    where: '--loads',
    exitCode: 2,
  });
});
