import { afterEach, describe, expect, test } from 'vitest';
import { openTmux, type TmuxOptions, type TmuxTerminal } from './tmux.ts';

const DEMO = [
  process.execPath,
  new URL('../../.cache/terminal/test/terminal/fixture/demo.js', import.meta.url).pathname,
];
const SMALL = { cols: 80, rows: 24 };

let terminal: TmuxTerminal | null = null;
afterEach(async () => {
  await terminal?.close();
  terminal = null;
});

async function demo(options: Partial<TmuxOptions> = {}): Promise<TmuxTerminal> {
  terminal = await openTmux(DEMO, { ...SMALL, ...options });
  await terminal.waitFor(/q finish|need 80x24/);
  return terminal;
}

/** The terminal is as the program found it: normal screen, cursor, line by line input, echo. */
async function expectRestored(open: TmuxTerminal): Promise<void> {
  expect(await open.flags()).toEqual({ cursorShown: true, alternate: false, mouse: false });
  const stty = (await open.stty()).split(/[\s;]+/);
  for (const setting of ['icanon', 'isig', 'echo', 'icrnl', 'opost'])
    expect(stty).toContain(setting);
}

describe('the picture', () => {
  test('stands on the alternate screen without a cursor and without the mouse', async () => {
    const open = await demo();
    const screen = await open.screen();
    expect(screen).toContain(' Kiln hairpin  ·  hairpin');
    expect(screen).toMatch(/[\u2801-\u28ff]/);
    expect(await open.flags()).toEqual({ cursorShown: false, alternate: true, mouse: false });
  });

  test('is laid out anew after a change of size', async () => {
    const open = await demo();
    await open.resize(160, 48);
    await open.waitFor((screen) => screen.split('\n')[47]?.includes('q finish') === true);
    await open.resize(79, 24);
    expect((await open.waitFor('need 80x24, have 79x24')).trim()).toBe('need 80x24, have 79x24');
    await open.resize(80, 24);
    const screen = await open.waitFor('q finish');
    expect(screen.split('\n')[14]).toMatch(/^ {3}0 %└.*─$/);
  });

  test('has target and driver in their colours', async () => {
    const open = await demo();
    const colours = await open.colours();
    expect(colours).toMatch(/38;5;74m/);
    expect(colours).toMatch(/38;5;214m/);
  });

  test('has no colour with NO_COLOR', async () => {
    const open = await demo({ env: { NO_COLOR: '1' } });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: SGR sequences start with one
    expect(await open.colours()).not.toMatch(/\x1b\[[0-9;]*\b(3[0-8]|4[0-8]|9[0-7])\b/);
  });

  test('is plain ASCII where the locale is not UTF-8', async () => {
    const open = await demo({ env: { LANG: 'C' } });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: everything beyond ASCII is looked for
    expect(await open.screen()).not.toMatch(/[^\x00-\x7f]/);
  });

  test('keeps up while it moves, and never shows an emptied screen', async () => {
    const open = await demo({ env: { DEMO_MOVING: '1' } });
    for (let look = 0; look < 40; look++) expect(await open.screen()).toContain('q finish');
  });
});

describe('keys', () => {
  test('are actions, Enter only once', async () => {
    const open = await demo();
    await open.send('p', 'Up', 'k', 'Down', 'Enter');
    await open.waitFor('keys: pause up up down choose pointer');
  });

  test('help opens, and Esc closes it and nothing else', async () => {
    const open = await demo();
    await open.send('?');
    await open.waitFor('Ctrl-L draws again');
    await open.send('Escape');
    await open.waitFor((screen) => !screen.includes('Ctrl-L draws again'));
    expect(open.isRunning()).toBe(true);
  });

  test('Ctrl-L draws the whole screen again', async () => {
    const open = await demo();
    const before = await open.screen();
    await open.scribble('\x1b[3;5Hscribbled by another program');
    await open.waitFor('scribbled');
    await open.send('C-l');
    await open.waitFor((screen) => screen === before);
  });

  test('the mouse is a height where it was asked for, and off again at the end', async () => {
    const open = await demo({ env: { DEMO_POINTER: '1' } });
    expect((await open.flags()).mouse).toBe(true);
    await open.sendBytes('\x1b[<35;10;1M');
    await open.waitFor('pointer:1.00');
    await open.sendBytes('\x1b[<35;10;24M');
    await open.waitFor('pointer:0.00');
    await open.send('q');
    expect(await open.exitCode()).toBe(0);
    await expectRestored(open);
  });
});

describe('the terminal is given back', () => {
  test('when the drill is finished', async () => {
    const open = await demo();
    await open.send('q');
    expect(await open.exitCode()).toBe(0);
    await expectRestored(open);
    const screen = await open.waitFor('exit code 0');
    expect(screen).toContain('finished');
    expect(screen).not.toContain('Kiln');
  });

  test.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)('on %s, with exit code %i', async (signal, code) => {
    const open = await demo({ env: { DEMO_MOVING: '1' } });
    open.signal(signal);
    expect(await open.exitCode()).toBe(code);
    await expectRestored(open);
  });

  test('on Ctrl-C as on SIGINT', async () => {
    const open = await demo();
    await open.send('C-c');
    expect(await open.exitCode()).toBe(130);
    await expectRestored(open);
  });

  test.each([
    ['thrown', 'r'],
    ['rejected', 'f'],
  ])('after an error that was %s, with the message on the normal screen', async (how, key) => {
    const open = await demo({ env: { DEMO_MOVING: '1' } });
    await open.send(key);
    expect(await open.exitCode()).toBe(70);
    await expectRestored(open);
    const screen = await open.waitFor('exit code 70');
    expect(screen).toContain(`${how} by a key`);
    expect(screen).not.toContain('q finish');
  });

  test('also when closing the devices hangs', async () => {
    const open = await demo({ env: { DEMO_STUCK: '1' } });
    open.signal('SIGTERM');
    expect(await open.exitCode()).toBe(143);
    await expectRestored(open);
  });
});

test('a terminal that is gone ends the program as SIGHUP does', async () => {
  const open = await demo({ env: { DEMO_MOVING: '1' } });
  await open.kill();
  expect(await open.exitCode()).toBe(129);
});

test('Ctrl-Z gives the terminal to the shell, and fg takes it again', async () => {
  const open = await openTmux(['sh', '-i'], SMALL);
  terminal = open;
  await open.waitFor(/[#$]\s*$/);
  await open.send(DEMO.join(' '), 'Enter');
  const before = await open.waitFor('q finish');
  await open.send('C-z');
  await open.waitFor((screen) => screen.includes('Stopped') && !screen.includes('q finish'));
  expect(await open.flags()).toEqual({ cursorShown: true, alternate: false, mouse: false });
  await open.send('fg', 'Enter');
  await open.waitFor((screen) => screen === before);
  expect(await open.flags()).toEqual({ cursorShown: false, alternate: true, mouse: false });
  await open.send('q');
  await open.waitFor('finished');
});

test('output that is no terminal is refused with what to do instead', async () => {
  const open = await openTmux(['sh', '-c', `${DEMO.join(' ')} | cat`], SMALL);
  terminal = open;
  expect(await open.exitCode()).toBe(0);
  expect(await open.waitFor('exit code')).toContain('add `--headless` for plain lines');
});
