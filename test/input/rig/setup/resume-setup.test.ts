import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { BUTTON_JOBS } from '../../../../src/drill/learned-buttons.ts';
import { loadRig } from '../../../../src/input/rig/rig-file.ts';
import {
  dropSetupDraft,
  setupDraftFile,
} from '../../../../src/input/rig/setup/setup-draft-file.ts';
import { setupRig } from '../../../../src/input/rig/setup/setup-rig.ts';
import type { RigDevice } from '../../../../src/input/rig-device.ts';
import { NAMED_PEDALS, PACKED_WHEEL } from '../../../reference/descriptors.ts';
import { deviceOf, word } from '../../report-batches.ts';
import { presses, ScriptedSetup, type Step } from './scripted-setup.ts';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'resume-'));
});
afterEach(() => rm(dir, { recursive: true }));

const PEDALS = deviceOf(1, 'test pedals', NAMED_PEDALS);
const WHEEL = deviceOf(2, 'test wheel', PACKED_WHEEL);
const pedals = (throttle: number, brake: number): readonly [number, number[]] => [
  0,
  [...word(throttle), ...word(brake), ...word(0)],
];
const REST = {
  question: /Touch nothing/,
  reports: Array.from({ length: 300 }, () => pedals(0, 200)),
};
const YES = { question: /does this follow/ };
const DRIVER: readonly Step[] = [
  { question: /Which foot/, answer: 'right' },
  { question: /Footwear/, answer: 'socks' },
];
const BRAKE: readonly Step[] = [
  { question: /^Brake: press/, reports: presses(200, 8200).map((counts) => pedals(0, counts)) },
  YES,
  { question: /What does the brake measure/, answer: 'force' },
];
const THROTTLE: readonly Step[] = [
  { question: /^Throttle/, reports: presses(0, 9800).map((counts) => pedals(counts, 200)) },
  YES,
];
const NO_CLUTCH: Step = { question: /^Clutch/, answer: 's' };
const NO_WHEEL: Step = { question: /^Wheel/, answer: 's' };
const BUTTONS: readonly Step[] = BUTTON_JOBS.map(() => ({ question: /Enter alone/ }));

/** Goes through the steps; a script that ends early is a driver who leaves. */
async function run(devices: readonly RigDevice[], steps: readonly Step[]): Promise<ScriptedSetup> {
  const driver = new ScriptedSetup(devices, steps);
  const known = await loadRig(dir, devices);
  const options = { source: driver.source, terminal: driver, dataDir: dir, known, loads: [] };
  await setupRig({ ...options, extent: 'whole' }).catch((error: Error) => {
    if (error.message !== 'the script is over') throw error;
  });
  expect(driver.left).toEqual([]);
  return driver;
}

describe('setting up that was left', { timeout: 30_000 }, () => {
  test('goes on at the question where it was left, and then forgets that it was', async () => {
    await run([PEDALS], [...DRIVER, REST, ...BRAKE]);
    const again = await run([PEDALS], [REST, ...THROTTLE, NO_CLUTCH]);
    expect(again.text).toContain(
      'Going on where setting up was left; done: foot and footwear, brake',
    );
    const last = await run([PEDALS], [REST, NO_WHEEL, ...BUTTONS]);
    expect(last.text).toContain('brake, throttle, clutch.');
    const rig = await loadRig(dir);
    expect(rig?.axes.map(({ role }) => role)).toEqual(['brake', 'throttle']);
    expect(rig).toMatchObject({ foot: 'right', footwear: 'socks' });
    await expect(readFile(setupDraftFile(dir))).rejects.toThrow('ENOENT');

    const fresh = await run([PEDALS], [...DRIVER, REST, { question: /Keep it/ }]);
    expect(fresh.text).not.toContain('Going on');
  });

  test('goes on between two buttons', async () => {
    const steps = [...DRIVER, REST, ...BRAKE, ...THROTTLE, NO_CLUTCH, NO_WHEEL];
    await run([PEDALS], [...steps, ...BUTTONS.slice(0, 4)]);
    const again = await run([PEDALS], [REST, ...BUTTONS.slice(4)]);
    expect(again.said.filter((line) => line.includes('Enter alone'))).toHaveLength(
      BUTTONS.length - 4,
    );
  });

  test('asks again what moved on a device that now describes other reports, and says so', async () => {
    await run([PEDALS], [...DRIVER, REST, ...BRAKE, ...THROTTLE, NO_CLUTCH]);
    // The same pedals after their firmware was renewed: the same axes, and one byte more of padding described.
    const descriptor = Uint8Array.from([
      ...NAMED_PEDALS.slice(0, -1),
      ...[0x75, 0x08, 0x95, 0x01, 0x81, 0x03, 0xc0],
    ]);
    const renewed = { ...PEDALS, descriptor };
    const again = await run(
      [renewed],
      [REST, { question: /brake.*Keep it/ }, { question: /throttle.*Keep it/ }, NO_CLUTCH],
    );
    expect(again.text).toContain('test pedals describes other reports than then');
  });

  test('asks again what was passed over when a device is new, and nothing else', async () => {
    await run([PEDALS], [...DRIVER, REST, ...BRAKE, ...THROTTLE, NO_CLUTCH, NO_WHEEL]);
    const again = await run([PEDALS, WHEEL], [REST, NO_CLUTCH, NO_WHEEL]);
    expect(again.text).toContain('test wheel is new: what was passed over is asked again.');
    const without = await run([PEDALS], [REST]);
    expect(without.text).toContain('test wheel is not connected now.');
  });

  test.each(['{"done": 3}', 'not JSON', '{"format":"ebbline rig setup","version":2}'])(
    'starts anew where its file reads %s',
    async (text) => {
      await writeFile(setupDraftFile(dir), text);
      const { text: said } = await run([PEDALS], [...DRIVER]);
      expect(said).toContain('How far setting up had come cannot be read: it starts anew.');
    },
  );

  test('starts anew when that is asked for', async () => {
    await run([PEDALS], [...DRIVER, REST, ...BRAKE]);
    await dropSetupDraft(dir);
    const { text } = await run([PEDALS], [...DRIVER, REST, { question: /brake.*Keep it/ }]);
    expect(text).not.toContain('Going on');
  });
});
