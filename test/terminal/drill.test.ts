import { describe, expect, test } from 'vitest';
import { programInTerminal } from './program.ts';

const BRAILLE = /[\u2801-\u28ff]/;
const ebbline = programInTerminal();

const VIRTUAL = ['drill', 'hairpin', '--source', 'virtual:skilled', '--seed', '1', '--reps', '1'];

describe.each([
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
])('a block of one rep at $cols x $rows', (size) => {
  test('goes from the count to the block and leaves the shell with its result', async () => {
    const open = await ebbline(VIRTUAL, size);
    const count = await open.waitFor('Brake when the count is over.');
    expect(count).toMatch(/rep 1 of 1 {2}· {2}shown/);
    expect(count).toContain('██████');
    const braking = await open.waitFor(/error so far \d+\.\d % rms/);
    expect(braking).toMatch(/start of release +turn-in/);
    expect(braking).toMatch(BRAILLE);
    await open.waitFor('How did it feel? The score follows.');
    const scored = await open.waitFor(/^ 1 +\d+\/100 +\d+ %/m);
    expect(scored).toContain('re-applied');
    const summary = await open.waitFor('median score');
    expect(summary).toMatch(/spread from three reps on/);
    expect(summary).toMatch(/reports: \d+ dropped/);
    await open.send('q');
    expect(await open.exitCode()).toBe(0);
    expect(await open.flags()).toEqual({ cursorShown: true, alternate: false, mouse: false });
    expect(await open.waitFor('exit code 0')).toMatch(/block {2}1 rep scored/);
  });
});

describe('keys', () => {
  test('the picker chooses a target, and q ends the drill before its first rep is over', async () => {
    const open = await ebbline(['drill', '--source', 'virtual']);
    const picker = await open.waitFor('Choose a target');
    expect(picker).toContain('A training aid, not a driving instruction');
    const first = /▶ (.+?) {2}/.exec(picker)?.[1];
    await open.send('Down');
    const second = /▶ (.+?) {2}/.exec(
      await open.waitFor((screen) => /▶ (.+?) {2}/.exec(screen)?.[1] !== first),
    )?.[1];
    await open.send('Enter');
    const drill = await open.waitFor(/rep 1 of 10/);
    expect(drill).toContain(` ${second}  ·`);
    await open.send('q');
    expect(await open.exitCode()).toBe(0);
  });

  test('p pauses and goes on, ? explains, Esc closes', async () => {
    const open = await ebbline(VIRTUAL);
    await open.waitFor('rep 1 of 1');
    await open.send('p');
    await open.waitFor('Paused');
    await open.send('?');
    await open.waitFor('hold the clutch for two seconds  ');
    await open.send('Escape');
    await open.waitFor((screen) => screen.includes('Paused') && !screen.includes('─ help'));
    await open.send('p');
    await open.waitFor('Brake when the count is over.');
  });

  test('n between reps takes a few words, and the next rep waits for them', async () => {
    const open = await ebbline([...VIRTUAL.slice(0, -1), '2']);
    await open.waitFor(/Rest \d s/);
    await open.send('n');
    await open.waitFor('Note on rep 1: _');
    for (const letter of 'Quiet, please') await open.send(letter === ' ' ? 'Space' : letter);
    await open.waitFor('Note on rep 1: Quiet, please_');
    await open.send('Enter');
    await open.waitFor('Brake when the count is over.');
    await open.send('n');
    await open.waitFor((screen) => !screen.includes('Note on rep'));
    await open.send('q');
    await open.waitFor('median score');
    await open.send('q');
    expect(await open.exitCode()).toBe(0);
  });

  test('a change of size in the middle of a rep lays it out anew', async () => {
    const open = await ebbline(VIRTUAL);
    await open.waitFor(/error so far/);
    await open.resize(160, 48);
    await open.waitFor((screen) => screen.split('\n')[47]?.includes('q finish') === true);
    await open.waitFor('median score');
  });
});

test('the mouse can be the pedal', async () => {
  const open = await ebbline(['drill', 'hairpin', '--source', 'pointer']);
  await open.waitFor('rep 1 of');
  expect((await open.flags()).mouse).toBe(true);
  await open.sendBytes('\x1b[<35;10;1M');
  await open.waitFor(/brake +█+ +100 %/);
});

test.each([
  ['SIGTERM', 143],
  ['SIGHUP', 129],
] as const)('%s in the middle of a rep gives the terminal back', async (signal, code) => {
  const open = await ebbline(VIRTUAL);
  await open.waitFor(/error so far/);
  open.signal(signal);
  expect(await open.exitCode()).toBe(code);
  expect(await open.flags()).toEqual({ cursorShown: true, alternate: false, mouse: false });
  expect(await open.stty()).toMatch(/(^|\s)icanon/);
});
