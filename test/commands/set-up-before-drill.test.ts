import { expect, test } from 'vitest';
import type { CommandContext } from '../../src/commands/command.ts';
import { setUpBeforeDrill } from '../../src/commands/set-up-before-drill.ts';
import type { Rig } from '../../src/input/rig/rig.ts';
import { saveRig } from '../../src/input/rig/rig-file.ts';
import { identity } from '../input/report-batches.ts';
import { calibration, WORD } from '../input/rig/calibration.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { fakeContext } from './fake-context.ts';

const [dataDir, emptyDir] = [temporaryFolder('before-drill'), temporaryFolder('no-brake')];
const PEDALS = { identity: identity(1), name: 'Pedals', path: '/dev/hidraw0', descriptor: null };
const BRAKE_ONLY: Rig = {
  axes: [
    { role: 'brake', device: PEDALS.identity, field: WORD, calibration: calibration(0, 1000) },
  ],
  buttons: [],
  wheelLockDeg: null,
  foot: 'left',
  footwear: '',
};

/** A set-up that confirms the brake and ends with an exit code. */
const confirming =
  (code: number) =>
  async ({ dataDir }: CommandContext): Promise<number> => {
    await saveRig(dataDir, BRAKE_ONLY);
    return code;
  };

test('goes on with what was set up', async () => {
  const context = fakeContext(dataDir);
  expect(await setUpBeforeDrill([PEDALS], context, confirming(0))).toEqual(BRAKE_ONLY);
  expect(context.printed()).toContain('Found Pedals, not set up yet.');
});

test('a driver who stops the set-up after the brake is not driven into the drill', async () => {
  const drill = setUpBeforeDrill([PEDALS], fakeContext(dataDir), confirming(130));
  await expect(drill).rejects.toThrow('its set-up was stopped');
});

test('a set-up without a brake is none', async () => {
  const drill = setUpBeforeDrill([PEDALS], fakeContext(emptyDir), async () => 0);
  await expect(drill).rejects.toThrow('the brake is not set up yet');
});
