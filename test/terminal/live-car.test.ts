import { describe, expect, test } from 'vitest';
import { programInTerminal } from './program.ts';

const ebbline = programInTerminal();

const SKILLED = ['--source', 'virtual:skilled', '--seed', '1', '--reps'];
const ZONE = ['drill', '--corner', 'kiln-hairpin', '--car', 'gt', ...SKILLED, '2'];

describe.each([
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
])('a zone of the live car at $cols x $rows', (size) => {
  test('goes from the strip over the zone to the corner from above and the block', async () => {
    const open = await ebbline(ZONE, size);
    const strip = await open.waitFor('m to turn-in');
    expect(strip).toMatch(/rep 1 of 2 {2}· {2}shown/);
    expect(strip).toMatch(/\b(200|150|100)\b/);
    expect(strip).toContain('brake');
    const zone = await open.waitFor(/steering, deg/);
    expect(zone).toMatch(/speed +\d+ km\/h/);
    expect(zone).toMatch(/gear +\d/);
    const above = await open.waitFor(/R start of release, r target's/);
    expect(above).toMatch(/T turn-in {2}S slowest/);
    await open.send('q');
    await open.waitFor('median score');
    await open.send('q');
    expect(await open.exitCode()).toBe(0);
    expect(await open.flags()).toEqual({ cursorShown: true, alternate: false, mouse: false });
  });
});

test('in the middle of a zone q leaves the terminal as it was', async () => {
  const open = await ebbline(ZONE);
  await open.waitFor(/steering, deg/);
  await open.send('q');
  await open.send('q');
  expect(await open.exitCode()).toBe(0);
  expect(await open.flags()).toEqual({ cursorShown: true, alternate: false, mouse: false });
});

test('a rep is rated before its result is shown', async () => {
  const open = await ebbline(['drill', 'hairpin', '--self-rating', ...SKILLED, '1']);
  await open.waitFor(/1 early/);
  await open.send('2');
  await open.waitFor(/1 light/);
  await open.send('3');
  await open.waitFor(/^ 1 +\d+\/100/m);
});

test('a plan goes from block to block', async () => {
  const open = await ebbline([
    'drill',
    '--plan',
    'maintenance',
    '--source',
    'virtual:skilled',
    '--seed',
    '1',
  ]);
  expect(await open.waitFor(/rep 1 of \d+/)).toMatch(/block 1 of \d/);
  await open.send('q');
});
