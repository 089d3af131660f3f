import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { variedLog } from '../trace/log/varied-log.ts';
import { runCommand } from './run-command.ts';

const folder = temporaryFolder('trace-compare');

const ebbline = (...argv: string[]) => runCommand([...argv, '--data-dir', folder]);
const compare = (...argv: string[]) => ebbline('trace', 'compare', ...argv);

/** What the log drives, as a target: 60 of 80 bar. */
const TARGET = join(folder, 'logged.yaml');
const ERRORS = [0.02, -0.02, 0.01, -0.01, 0];
const ZONES = ['--zone', '1,3,5,7,9'];

beforeAll(async () => {
  writeFileSync(
    TARGET,
    `name: Logged corner
corner_type: test
domain: time
rise: { duration_s: 0.22 }
peak_level: 0.75
hold_s: 0.48
release: { duration_s: 1.5, shape: power-law, exponent: 1.3 }
full_scale: { pressure_bar: 80 }
`,
  );
  const late = variedLog({
    laps: 5,
    timingS: (lap) => 0.15 + ERRORS[lap]!,
    rate: () => 1,
    amount: (lap) => 0.9 * (1 + ERRORS[(lap + 1) % 5]!),
  });
  writeFileSync(join(folder, 'friday.csv'), late);
  await ebbline('trace', 'import', join(folder, 'friday.csv'));
  await ebbline(
    ...['drill', '--target', TARGET, '--source', 'virtual:skilled', '--headless'],
    ...['--seed', '2', '--reps', '8'],
  );
});

describe('trace compare', () => {
  test('says first what carried over, and takes the pedal force out', async () => {
    const { code, stdout, stderr } = await compare('friday', ...ZONES, '--target', TARGET);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const lines = stdout.split('\n');
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    expect(lines[0]).toBe('friday against the rig: Logged corner');
    expect(lines[1]).toMatch(
      /^5 logged zones, \d+ (hidden|shown and hidden) reps of virtual driver/,
    );
    expect(stdout).toMatch(/Did not carry over: .*100 to 50 % \(\d+\.\d % more brake in the car\)/);
    expect(stdout).toMatch(/In the car: .*start of release 0\.\d\d s later/);
    // 54 bar of 80 in the car against 60 of 80 on the rig, by a driver with errors of some per cent
    expect(stdout).toMatch(/At 80\.0 bar for full scale the car was pressed more lightly: -\d/);
    expect(stdout).toContain('Speed: a target over time knows none.');
    expect(stdout).toContain('The wheel: the log has no steering whose sign is known.');
  });

  test('as JSON', async () => {
    const { stdout } = await compare('friday', ...ZONES, '--target', TARGET, '--json');
    const json = JSON.parse(stdout);
    expect(json).toMatchObject({ trace: 'friday', target: 'logged', zones: [1, 3, 5, 7, 9] });
    expect(json.phases.map(({ phase }: { phase: string }) => phase)).toEqual([
      'hit',
      '100 to 50 %',
      '50 to 10 %',
      'last 10 %',
    ]);
    expect(json.force_ratio).toBeGreaterThan(0.84);
    expect(json.force_ratio).toBeLessThan(0.96);
    expect(json.level_one_pressure_bar).toBeCloseTo(80 * json.force_ratio, -0.5);
    expect(json.curves.rig_mean_level).toHaveLength(json.curves.car_mean_level.length);
  });

  test('of all zones of the log warns that they may be of several corners', async () => {
    const { code, stdout } = await compare('friday', '--target', TARGET);
    expect(code).toBe(0);
    expect(stdout).toContain('10 logged zones');
    expect(stdout).toContain('all 10 zones of the log are taken for one corner');
  });

  test('with the live car, by corner', async () => {
    await ebbline(
      ...['drill', 'kiln-hairpin', '--source', 'virtual:club', '--headless'],
      ...['--seed', '1', '--reps', '3'],
    );
    const { code, stdout } = await compare('friday', ...ZONES, '--corner', 'kiln-hairpin');
    expect(code).toBe(0);
    expect(stdout).toMatch(/- Speed: entered at \d+ km\/h in the car, \d+ km\/h on the rig/);
    expect(stdout).toContain('nobody says what full scale is');
  });

  test.each([
    [['friday', '--zone', '1,3', '--target', TARGET], 1, 'It takes 1 more of the logged zones'],
    [['friday', '--target', 'hairpin'], 1, 'there are no reps of target "hairpin"'],
    [['friday', '--corner', 'coil-bend'], 1, 'there are no reps of corner "coil-bend"'],
    [['friday'], 2, 'nothing to compare with'],
    [['friday', '--target', 'hairpin', '--corner', 'coil-bend'], 2, '--target and --corner'],
    [[], 2, 'no trace named'],
    [['friday', '--target', TARGET, '--weeks', '0'], 2, 'from 1 to 520'],
    [['fridai', '--target', TARGET], 1, 'Did you mean friday?'],
    [['friday', '--target', TARGET, '--driver', 'nobody'], 1, 'leave --driver out'],
  ] as const)('refuses %j', async (argv, exitCode, said) => {
    const { code, stderr } = await compare(...argv);
    expect({ code, stderr }).toEqual({ code: exitCode, stderr: expect.stringContaining(said) });
  });

  test('says so where nothing was ever driven', async () => {
    const argv = ['trace', 'compare', 'friday', '--target', 'hairpin'];
    const { code, stderr } = await runCommand([...argv, '--data-dir', join(folder, 'empty')]);
    expect(code).toBe(1);
    expect(stderr).toContain('there is no trace "friday"');
  });
});
