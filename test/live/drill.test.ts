import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { discoverDevices } from '../../src/input/discovery/discover-devices.ts';
import type { FoundDevice } from '../../src/input/discovery/found-device.ts';
import { saveRig } from '../../src/input/rig/rig-file.ts';
import { assignedRig, BRAKE, LEFT_STOP, THROTTLE, WHEEL_LOCK_DEG } from './assigned-rig.ts';
import { DeviceProcess, type Line, type Sending } from './device-process.ts';
import { Program } from './program.ts';
import { PEDALS, type VirtualDevice, WHEEL } from './virtual-rig.ts';

/** The countdown ends 3.3 s after the foot is off, and a rep may begin up to 3 s after it. */
const ONSET_S = 4.6;
const PEAK_LEVEL = 0.85;

const uhid = new DeviceProcess();
const dataDir = mkdtempSync(join(tmpdir(), 'drill-'));

beforeAll(async () => {
  await uhid.create(PEDALS);
  await uhid.create(WHEEL);
});

afterAll(async () => {
  await uhid.close();
  rmSync(dataDir, { recursive: true });
});

/** Patience that a software-emulated guest on a busy machine needs; nothing is measured with it. */
function eventually<T>(check: () => T | Promise<T>): Promise<T> {
  return vi.waitFor(check, { timeout: 400_000, interval: 100 });
}

function find({ product }: VirtualDevice): Promise<FoundDevice> {
  return eventually(async () => {
    const found = await discoverDevices();
    const match = found.find(({ identity }) => identity.productId === product);
    if (match === undefined) throw new Error('not found');
    return match;
  });
}

/** The brake of the target `hairpin`, as its file in profiles/targets describes it. */
function brakeLine(): Line {
  const release = Array.from({ length: 35 }, (_, i): [number, number] => {
    const share = i / 34;
    return [0.48 + 1.7 * share, PEAK_LEVEL * (1 - share) ** 1.4];
  });
  const levels: [number, number][] = [[0, 0], [0.24, PEAK_LEVEL], ...release];
  const counts = levels.map(([timeS, level]): [number, number] => [
    ONSET_S + timeS,
    BRAKE.rest + level * (BRAKE.full - BRAKE.rest),
  ]);
  return [[0, BRAKE.rest], ...counts];
}

/** A foot that comes off the throttle before it brakes, and brakes once. */
function playPedals(unplugS?: number): Promise<Sending> {
  const throttle: Line = [
    [0, 0],
    [1, THROTTLE.full],
    [ONSET_S - 0.4, THROTTLE.full],
    [ONSET_S - 0.1, 0],
  ];
  const points: Line[] = [brakeLine(), throttle, [[0, 0]], [[0, 0]], [[0, 0]]];
  return uhid.play(PEDALS, { rateHz: 1000, points, ...(unplugS === undefined ? {} : { unplugS }) });
}

/** 150 degrees to the left while the brake comes off, then back. */
function playWheel(): Promise<Sending> {
  const turned = (LEFT_STOP * 150) / (WHEEL_LOCK_DEG / 2);
  const points: Line = [
    [0, 0],
    [ONSET_S + 0.95, 0],
    [ONSET_S + 1.9, turned],
    [ONSET_S + 3, turned],
    [ONSET_S + 4, 0],
  ];
  return uhid.play(WHEEL, { rateHz: 500, points: [points] });
}

test('a rep on real devices is scored and kept, and one cut by unplugging is void', async () => {
  const [pedals, wheel] = [await find(PEDALS), await find(WHEEL)];
  await saveRig(dataDir, assignedRig(pedals.identity, wheel.identity));
  const command = ['drill', 'hairpin', '--headless', '--source', 'hid', '--reps', '1'];
  const program = new Program(...command, '--data-dir', dataDir);
  try {
    await eventually(() => expect(program.output).toContain('2 devices'));

    // The pedals go in the middle of the release, and come back at another node.
    await playWheel();
    await (await playPedals(ONSET_S + 1.2)).finished;
    await eventually(() => expect(program.output).toContain('device lost'));
    await uhid.create({ ...WHEEL, id: 'decoy', product: 0x7e05 });
    await uhid.create(PEDALS);
    const { path } = await find(PEDALS);
    await eventually(() => expect(program.hasOpen(path)).toBe(true));

    await playWheel();
    await playPedals();
    expect(await program.exitCode).toBe(0);
  } finally {
    program.kill();
    console.log(program.output, program.errors);
  }

  const store = openHistory(dataDir);
  const [cut, whole, ...more] = [...store.reps({})];
  expect(more).toEqual([]);
  expect(cut).toMatchObject({ targetId: 'hairpin', voided: 'device lost', outcomes: [] });
  expect(whole).toMatchObject({
    targetId: 'hairpin',
    voided: null,
    practice: { source: 'hid', foot: 'left', footwear: 'socks', sensor: 'force' },
  });
  const outcome = whole!.outcomes[0]!;
  // Holding, dumping or doing nothing scores 0, following the target 100. This foot follows it to the count, but an
  // emulated guest on a busy machine stands still at times, and what it then stamps late is scored as it is stamped.
  expect(outcome).toMatchObject({ kind: 'scored' });
  expect(outcome.score).toBeGreaterThan(20);
  expect(program.output).toContain(`score ${String(Math.round(outcome.score)).padStart(3)}`);

  const record = store.record(whole!.id);
  store.close();
  expect(record.brake.value.length).toBeGreaterThan(200);
  expect(Math.max(...record.brake.value)).toBeCloseTo(PEAK_LEVEL, 2);
  expect(Math.max(...record.throttle!.value)).toBeCloseTo(1, 2);
  expect(Math.max(...record.steering!.value)).toBeCloseTo(150, 0);
  expect(record.clutch).toBeNull();

  const progress = new Program('progress', '--json', '--data-dir', dataDir);
  expect(await progress.exitCode).toBe(0);
  expect(JSON.parse(progress.output)).toMatchObject({
    targets: [
      { target_id: 'hairpin', days: [{ source: 'hid', scored_reps: 1, device_lost_reps: 1 }] },
    ],
  });
});
