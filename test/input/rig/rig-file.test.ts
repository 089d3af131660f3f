import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { AxisRole, Rig } from '../../../src/input/rig/rig.ts';
import { loadRig, loadRigs, saveRig } from '../../../src/input/rig/rig-file.ts';
import type { DeviceIdentity } from '../../../src/input/rig-device.ts';
import { Problem } from '../../../src/problem.ts';
import { identity } from '../report-batches.ts';
import { calibration, WORD } from './calibration.ts';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'rig-file-'));
});
afterEach(() => rm(dir, { recursive: true }));

function rigOn(devices: Partial<Record<AxisRole, DeviceIdentity>>, footwear = 'boot'): Rig {
  const load = { newtonsPerCount: 0.25, zeroCounts: 10, loads: [], residualN: 0.5 };
  return {
    axes: Object.entries(devices).map(([role, device]) => ({
      role: role as AxisRole,
      device,
      field: WORD,
      calibration: calibration(0, 1000, { sensor: 'force', load }),
    })),
    buttons: [
      {
        device: identity(3),
        field: { ...WORD, bitSize: 1 },
        pressedCounts: 0,
        control: 'paddle',
        action: null,
      },
    ],
    wheelLockDeg: null,
    foot: 'left',
    footwear,
  };
}

const OLD = rigOn({ brake: identity(1), steering: identity(9) });
const NEW = rigOn({
  brake: identity(2, { serial: 'B2' }),
  throttle: identity(2, { serial: 'B2' }),
});

describe('a saved rig', () => {
  test('comes back as it was', async () => {
    await saveRig(dir, NEW);
    expect(await loadRig(dir)).toEqual(NEW);
  });

  test('replaces the one on the same devices and keeps the others', async () => {
    await saveRig(dir, OLD);
    await saveRig(dir, NEW);
    const again = { ...OLD, footwear: 'race shoe' };
    await saveRig(dir, again);
    expect(await loadRigs(dir)).toEqual([again, NEW]);
  });

  test('is found by the devices that are connected', async () => {
    await saveRig(dir, OLD);
    await saveRig(dir, NEW);
    const found = (...devices: DeviceIdentity[]): Promise<Rig | null> =>
      loadRig(
        dir,
        devices.map((device) => ({ identity: device })),
      );
    expect(await found(identity(1))).toEqual(OLD);
    expect(await found(identity(2, { serial: 'B2' }))).toEqual(NEW);
    expect(await found(identity(2, { serial: 'B3' }))).toBeNull();
    expect(await found(identity(9))).toBeNull();
    expect(await found()).toBeNull();
  });

  test('of two that fit is the one with more of its axes there', async () => {
    const alone = rigOn({ brake: identity(1) });
    await saveRig(dir, OLD);
    await saveRig(dir, alone);
    const pedals = { identity: identity(1) };
    expect(await loadRig(dir, [pedals, { identity: identity(9) }])).toEqual(OLD);
    expect(await loadRig(dir, [pedals])).toEqual(alone);
  });

  test('takes the place of one that it covers, so that no older calibration comes back', async () => {
    await saveRig(dir, rigOn({ brake: identity(1) }));
    await saveRig(dir, NEW);
    await saveRig(dir, OLD);
    expect(await loadRigs(dir)).toEqual([OLD, NEW]);
  });

  test('is private, and no draft stays behind', async () => {
    const folder = join(dir, 'new', 'folder');
    await saveRig(folder, NEW);
    expect(await readdir(folder)).toEqual(['rig.json']);
    if (process.platform === 'win32') return;
    expect((await stat(folder)).mode & 0o777).toBe(0o700);
    expect((await stat(join(folder, 'rig.json'))).mode & 0o777).toBe(0o600);
  });
});

test('nothing saved is no rig', async () => {
  expect(await loadRig(join(dir, 'never made'))).toBeNull();
});

describe('a file that cannot be used', () => {
  const file = { format: 'ebbline rig', version: 1, rigs: [NEW] };
  const brake = NEW.axes[0]!;
  test.each([
    ['is empty', '', 'not JSON'],
    ['was cut off', JSON.stringify(file).slice(0, -9), 'not JSON'],
    ['is no object', 'null', 'must be object'],
    ['is something else', '{"rigs": []}', 'must have required property'],
    ['is newer', JSON.stringify({ ...file, version: 2 }), 'has version 2, this program knows 1'],
    ['is of no version', JSON.stringify({ ...file, version: 'x' }), '/version'],
    [
      'has an unknown key',
      JSON.stringify({ ...file, rigs: [{ ...NEW, seat: 1 }] }),
      '/rigs/0 must NOT have additional properties',
    ],
    [
      'has an unknown role',
      JSON.stringify({ ...file, rigs: [{ ...NEW, axes: [{ ...brake, role: 'horn' }] }] }),
      '/rigs/0/axes/0/role',
    ],
    [
      'has no number for the rest',
      JSON.stringify({
        ...file,
        rigs: [
          { ...NEW, axes: [{ ...brake, calibration: { ...brake.calibration, restCounts: null } }] },
        ],
      }),
      '/rigs/0/axes/0/calibration/restCounts must be number',
    ],
  ])('%s: it is refused and not overwritten', async (_name, text, words) => {
    const path = join(dir, 'rig.json');
    await writeFile(path, text);
    await expect(loadRig(dir)).rejects.toThrow(words);
    await expect(loadRig(dir)).rejects.toBeInstanceOf(Problem);
    await expect(loadRig(dir)).rejects.toMatchObject({ where: path });
    await expect(saveRig(dir, NEW)).rejects.toBeInstanceOf(Problem);
    expect(await readFile(path, 'utf8')).toBe(text);
  });

  test('is a folder: it is refused', async () => {
    await mkdir(join(dir, 'rig.json'));
    await expect(loadRig(dir)).rejects.toThrow('cannot be read');
  });
});

test('a folder that is a file is a problem, not a crash', async () => {
  await writeFile(join(dir, 'file'), '');
  await chmod(join(dir, 'file'), 0o600);
  await expect(saveRig(join(dir, 'file'), NEW)).rejects.toBeInstanceOf(Problem);
});
