import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { rigList } from '../../src/commands/rig-list.ts';
import type { FoundDevice } from '../../src/input/discovery/found-device.ts';
import { saveRig } from '../../src/input/rig/rig-file.ts';
import { Problem } from '../../src/problem.ts';
import { deviceOf, identity } from '../input/report-batches.ts';
import { calibration, WORD } from '../input/rig/calibration.ts';
import { NAMED_PEDALS, PACKED_WHEEL, SPEC_MOUSE } from '../reference/descriptors.ts';
import { fakeContext } from './fake-context.ts';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'rig-list-'));
});
afterEach(() => rm(dir, { recursive: true }));

function found(
  productId: number,
  name: string,
  descriptor: Uint8Array | null,
  more: Partial<FoundDevice> = {},
): FoundDevice {
  return {
    ...deviceOf(productId, name, descriptor),
    maker: '',
    kind: 'rig',
    problem: null,
    ...more,
  };
}

const DEVICES = [
  found(1, 'test pedals', NAMED_PEDALS),
  found(2, 'test wheel', PACKED_WHEEL),
  found(3, 'test mouse', SPEC_MOUSE, { kind: 'desk' }),
  found(4, 'mute box', null, { kind: 'other' }),
];

async function listed(
  values: Readonly<Record<string, boolean>>,
  devices: FoundDevice[] = DEVICES,
): Promise<string> {
  const context = fakeContext(dir);
  expect(await rigList({ positionals: [], values }, context, async () => devices)).toBe(0);
  return context.printed();
}

async function saveBrake(): Promise<void> {
  await saveRig(dir, {
    axes: [
      {
        role: 'brake',
        device: identity(1),
        field: { ...WORD, bitOffset: 16 },
        calibration: calibration(0, 10000),
      },
      {
        role: 'clutch',
        device: identity(1),
        field: { ...WORD, bitOffset: 99 },
        calibration: calibration(0, 10000),
      },
    ],
    buttons: [],
    wheelLockDeg: null,
    foot: 'left',
    footwear: '',
  });
}

describe('rig list', () => {
  test('shows axes by their usage, with ranges, and counts buttons', async () => {
    const text = await listed({});
    expect(text).toContain('test pedals  (f055:0001)\n');
    expect(text).toMatch(/ {2}Brake +16 bits +0\.\.10000\n/);
    expect(text).toMatch(/ {2}X +14 bits +0\.\.16383\n/);
    expect(text).toContain('  14 buttons\n');
    expect(text).not.toContain('mouse');
  });

  test('says what the rig uses, learnt fields too', async () => {
    await saveBrake();
    const text = await listed({});
    expect(text).toMatch(/ {2}Brake +16 bits +0\.\.10000 +brake\n/);
    expect(text).toContain('  clutch, learnt by moving\n');
  });

  test('lists everything when asked', async () => {
    const text = await listed({ all: true });
    expect(text).toContain('test mouse');
    expect(text).toContain('mute box  (f055:0004)\n  does not say what it has');
  });

  test('names what keeps a device from opening', async () => {
    const problem = new Problem('no permission to read test pedals', {
      where: '/dev/test1',
      next: 'Ask for it.',
    });
    const text = await listed({}, [found(1, 'test pedals', NAMED_PEDALS, { problem })]);
    expect(text).toContain('/dev/test1: no permission to read test pedals\n  Ask for it.');
  });

  test('with nothing plugged in is one line with the way out', async () => {
    expect(await listed({}, [])).toBe(
      'No pedals or wheel found: plug them in, or drive with `--source virtual`.\n',
    );
    expect(await listed({}, DEVICES.slice(2))).toContain('for the 2 other devices');
    expect(JSON.parse(await listed({ json: true }, []))).toEqual({ devices: [] });
  });

  test('as JSON names units and roles', async () => {
    await saveBrake();
    const { devices } = JSON.parse(await listed({ json: true }));
    expect(devices).toHaveLength(2);
    expect(devices[0]).toMatchObject({
      name: 'test pedals',
      vendor_id: 0xf055,
      product_id: 1,
      serial: null,
      kind: 'rig',
      problem: null,
      has_descriptor: true,
      buttons: 0,
      learnt_roles: ['clutch'],
    });
    expect(devices[0].axes[1]).toEqual({
      usage: 'Brake',
      report_id: 0,
      bit_offset: 16,
      bit_size: 16,
      logical_min_counts: 0,
      logical_max_counts: 10000,
      roles: ['brake'],
    });
  });

  test('does not overwrite or hide a damaged rig file', async () => {
    const { writeFile } = await import('node:fs/promises');
    await writeFile(join(dir, 'rig.json'), '{');
    await expect(listed({})).rejects.toBeInstanceOf(Problem);
  });
});
