import { describe, expect, test } from 'vitest';
import { findPlayer } from '../../src/sound/find-player.ts';
import type { PlayerCommand } from '../../src/sound/player-command.ts';

const byNode = (script: string): PlayerCommand => ({
  program: process.execPath,
  args: ['-e', script],
  latencyUs: null,
});

/** Holds `bufferMs` of sound back and plays what it got in real time, as a sound card does. */
const playing = (bufferMs: number): string => `
  let got = 0, from = null;
  process.stdin.on('data', (bytes) => { from ??= performance.now(); got += bytes.length / 96; });
  process.stdin.on('end', () => setTimeout(() => process.exit(0), from + got + ${bufferMs} - performance.now()));
`;

const NOT_THERE: PlayerCommand = { program: 'no-such-player', args: [], latencyUs: null };
const REFUSES = byNode('process.exit(1)');

describe('a player', () => {
  test('that is not there or refuses is passed over', async () => {
    const works = byNode(playing(0));
    expect((await findPlayer([NOT_THERE, REFUSES, works])).found?.command).toBe(works);
  });

  test('none at all is no error', async () => {
    expect((await findPlayer([NOT_THERE, REFUSES])).found).toBeNull();
  });

  test('that is installed and plays nothing is told apart from one that is not there', async () => {
    const { refused } = await findPlayer([NOT_THERE, REFUSES]);
    expect(refused).toEqual([process.execPath]);
    expect((await findPlayer([NOT_THERE])).refused).toEqual([]);
  });

  test('that never ends is given up', async () => {
    const endless = byNode('process.stdin.resume(); setInterval(() => {}, 1000)');
    expect((await findPlayer([endless])).found).toBeNull();
  });

  test('is measured by the time it plays on after the last sample', async () => {
    const { found } = await findPlayer([byNode(playing(700))]);
    expect(found?.latencyS).toBeGreaterThan(0.6);
  });

  test('that tells its latency is believed, and what waits for the player added', async () => {
    // A shell is there at once on a busy machine too; what is told after the trial of half a second is not heard.
    const tells: PlayerCommand = {
      program: 'sh',
      args: ['-c', 'printf "Latency: %s usec\\n" 90000 20000 30000 >&2; exec cat >/dev/null'],
      latencyUs: /Latency: (\d+) usec/g,
    };
    expect((await findPlayer([tells])).found?.latencyS).toBeCloseTo(0.03 + 0.03, 9);
  });
});
