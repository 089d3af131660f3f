import { PassThrough } from 'node:stream';
import { describe, expect, test } from 'vitest';
import {
  Interrupted,
  ReadlineTerminal,
} from '../../../../src/input/rig/setup/readline-terminal.ts';
import { askWord, askYes } from '../../../../src/input/rig/setup/setup-terminal.ts';
import { Problem } from '../../../../src/problem.ts';

function piped(terminal = false) {
  const [input, output] = [new PassThrough(), new PassThrough()];
  let shown = '';
  output.on('data', (chunk) => {
    shown += String(chunk);
  });
  return { input, terminal: new ReadlineTerminal(input, output, terminal), shown: () => shown };
}

describe('ReadlineTerminal', () => {
  test('gives answers in order, those that came early too', async () => {
    const { input, terminal } = piped();
    input.write('one \n two\nthree\n');
    expect(await terminal.ask('1?')).toBe('one');
    expect(await terminal.ask('2?')).toBe('two');
    expect(await terminal.askLive('3?', () => 'live')).toBe('three');
  });

  test('shows what it says and asks', async () => {
    const { input, terminal, shown } = piped();
    terminal.say('hello');
    const answer = terminal.ask('who?');
    input.write('me\n');
    await answer;
    expect(shown()).toBe('hello\nwho? ');
  });

  test('the end of the input is a problem that says how to go on', async () => {
    const { input, terminal } = piped();
    const open = terminal.ask('now?');
    input.end();
    await expect(open).rejects.toBeInstanceOf(Problem);
    await expect(terminal.ask('later?')).rejects.toThrow('ended before it was done');
  });

  test('redraws the live line on a terminal while it waits', async () => {
    const { input, terminal, shown } = piped(true);
    let drawn = 0;
    const answer = terminal.askLive('follow?', () => {
      drawn += 1;
      if (drawn === 2) input.write('y\r');
      return `bar ${drawn}`;
    });
    expect(await answer).toBe('y');
    expect(shown()).toContain('bar 1');
    expect(shown()).toContain('bar 2');
    terminal.close();
  });

  test('a question that needs no answer is over by itself, by an answer, or with the input', async () => {
    const { input, terminal, shown } = piped();
    let looked = 0;
    expect(await terminal.askUntil('press?', () => ++looked === 2)).toBeNull();
    expect(shown()).toBe('press? \n');
    input.write('no\n');
    expect(await terminal.askUntil('again?', () => false)).toBe('no');
    const thrown = terminal.askUntil('broken?', () => {
      throw new Error('unplugged');
    });
    await expect(thrown).rejects.toThrow('unplugged');
    const last = terminal.askUntil('last?', () => false);
    input.end();
    expect(await last).toBeNull();
  });

  test('Ctrl-C on a terminal interrupts the question', async () => {
    const { input, terminal } = piped(true);
    const open = terminal.ask('now?');
    input.write('\u0003');
    await expect(open).rejects.toBeInstanceOf(Interrupted);
    terminal.close();
  });
});

describe('asking', () => {
  test('for yes or no until it is one', async () => {
    const { input, terminal, shown } = piped();
    input.write('perhaps\nYES\n\nn\n');
    expect(await askYes(terminal, 'Sure?', false)).toBe(true);
    expect(await askYes(terminal, 'Sure?', true)).toBe(true);
    expect(await askYes(terminal, 'Sure?', true)).toBe(false);
    expect(shown()).toContain('Sure? [y/N] Answer y or n.');
  });

  test('for a word by its first letters, with a default', async () => {
    const { input, terminal } = piped();
    input.write('x\nR\n\n');
    expect(await askWord(terminal, 'Foot?', ['left', 'right'], 'left')).toBe('right');
    expect(await askWord(terminal, 'Foot?', ['left', 'right'], 'left')).toBe('left');
  });
});
