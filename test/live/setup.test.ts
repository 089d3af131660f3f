import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { loadRig } from '../../src/input/rig/rig-file.ts';
import { DeviceProcess, type Line } from './device-process.ts';
import { Program } from './program.ts';
import { PEDALS, WHEEL } from './virtual-rig.ts';

const uhid = new DeviceProcess();
const dataDir = mkdtempSync(join(tmpdir(), 'setup-'));
const RATE_HZ = 250;

beforeAll(async () => {
  await uhid.create(PEDALS);
  await uhid.create(WHEEL);
  await playPedals({});
  await playWheel(0);
});

afterAll(async () => {
  await uhid.close();
  rmSync(dataDir, { recursive: true });
});

/** Patience that a software-emulated guest on a busy machine needs; nothing is measured with it. */
function eventually(check: () => void): Promise<void> {
  return vi.waitFor(check, { timeout: 300_000, interval: 100 });
}

/** There in a second, held for two, and back in a second. */
const press = (rest: number, full: number): Line => [
  [0, rest],
  [0.5, rest],
  [1.5, full],
  [3.5, full],
  [4.5, rest],
  [5, rest],
];
const BRAKE = [2000, 62_000] as const;
const THROTTLE = [0, 4000] as const;

async function playPedals({ brake = false, throttle = false }): Promise<void> {
  const still: Line = [
    [0, 0],
    [0.5, 0],
  ];
  const resting: Line = still.map(([s]) => [s, BRAKE[0]]);
  const points = [
    brake ? press(...BRAKE) : resting,
    throttle ? press(...THROTTLE) : still,
    ...[still, still, still],
  ];
  await (await uhid.play(PEDALS, { rateHz: RATE_HZ, points })).finished;
}

async function playWheel(to: number): Promise<void> {
  await (await uhid.play(WHEEL, { rateHz: RATE_HZ, points: [press(0, to)] })).finished;
}

test('three movements set up what was never seen before, and it is found again', async () => {
  const program = new Program('rig', 'setup', '--short', '--data-dir', dataDir);
  const answer = async (line = ''): Promise<void> => {
    // What was sent last has to come through before the answer.
    await delay(1000);
    program.answer(line);
  };
  let heard = 0;
  /** What came since the last question, up to the one that is awaited; a guest that stalled makes it ask again. */
  const asked = async (...texts: readonly string[]): Promise<string> => {
    let since = '';
    await eventually(() => {
      since = program.output.slice(heard);
      expect(texts.some((text) => since.includes(text))).toBe(true);
    });
    heard = program.output.length;
    return since;
  };
  const move = async (play: () => Promise<void>, next: string): Promise<void> => {
    do {
      await play();
      await answer();
    } while ((await asked(next, 'Once more.')).includes('Once more.'));
  };
  try {
    await asked('Touch nothing');
    await delay(2000);
    await answer();
    await asked('Brake: press it once');
    await move(() => playPedals({ brake: true }), 'does this follow your foot');
    await answer('y');
    await asked('Throttle: press it once');
    await move(() => playPedals({ throttle: true }), 'does this follow your foot');
    await answer('y');
    await asked('Wheel: from straight ahead');
    await move(() => playWheel(-12_000), 'How many degrees');
    await answer('540');
    await asked('does this follow your hands');
    await answer('y');
    expect(await program.exitCode).toBe(0);
  } finally {
    program.kill();
    console.log(program.output, program.errors);
  }
  const rig = await loadRig(dataDir);
  expect(rig?.axes.map(({ role }) => role)).toEqual(['brake', 'throttle', 'steering']);
  const ends = [BRAKE, THROTTLE, [0, -32_767] as const];
  for (const [i, [rest, full]] of ends.entries()) {
    const { restCounts, fullCounts } = rig!.axes[i]!.calibration;
    expect(restCounts).toBe(rest);
    // A guest that stalls while the pedal is held sees less of it.
    expect(Math.abs(fullCounts - full)).toBeLessThan(0.03 * Math.abs(full - rest));
  }
  expect(rig?.wheelLockDeg).toBe(540);
});

test('the check judges the rig that was set up', async () => {
  const program = new Program('rig', 'check', '--seconds', '8', '--json', '--data-dir', dataDir);
  await eventually(() => expect(program.errors).toContain('Touch nothing'));
  await delay(2500);
  await playPedals({ brake: true });
  expect(await program.exitCode).toBe(0);
  const { devices, verdicts } = JSON.parse(program.output);
  expect(devices.map(({ name }: { name: string }) => name)).toEqual([
    'Virtual pedals',
    'Virtual wheel',
  ]);
  expect(verdicts).toContainEqual(
    expect.objectContaining({ role: 'brake', check: 'movement', verdict: 'good' }),
  );
  expect(verdicts).toContainEqual(
    expect.objectContaining({ role: 'throttle', check: 'movement', verdict: 'bad' }),
  );
});

test('doctor finds the devices, and prints the rules for just these', async () => {
  const doctor = new Program('doctor', '--data-dir', dataDir);
  await doctor.exitCode;
  expect(doctor.output).toMatch(/works +devices +Virtual pedals/);
  expect(doctor.output).toMatch(/works +rig +set up/);
  const rules = new Program('doctor', '--udev-rules');
  expect(await rules.exitCode).toBe(0);
  // A device made by uhid has no USB interface: its ids are in the name of its HID parent.
  expect(rules.output.split('\n')).toEqual([
    '# Virtual pedals',
    'KERNEL=="hidraw*", KERNELS=="*:1209:7E01.*", TAG+="uaccess"',
    '# Virtual wheel',
    'KERNEL=="hidraw*", KERNELS=="*:1209:7E02.*", TAG+="uaccess"',
    '',
  ]);
  expect(rules.errors).toContain('/etc/udev/rules.d/70-ebbline.rules');
});
