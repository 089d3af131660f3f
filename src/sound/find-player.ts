import { performance } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { Player } from './player.ts';
import { PLAYER_COMMANDS, type PlayerCommand } from './player-command.ts';
import { LEAD_S, SoundClock } from './sound-clock.ts';

/** A player that works here. */
export interface FoundPlayer {
  readonly command: PlayerCommand;
  /** Seconds that a sound is on its way, from being asked for to being played. */
  readonly latencyS: number;
}

/** What a search for a player came to. */
export interface PlayerSearch {
  /** The first player that plays a moment of silence, null where none does: no sound is no error. */
  readonly found: FoundPlayer | null;
  /** Programs tried before it that are installed and play nothing. */
  readonly refused: readonly string[];
}

const TRIAL_S = 0.5;
const STEP_MS = 10;
/** A player that holds seconds of samples is of no use, and one that never ends must not hold up the drill. */
const LONGEST_S = 2;

/** Tries one player after the other, half a second each. */
export async function findPlayer(
  commands: readonly PlayerCommand[] = PLAYER_COMMANDS,
): Promise<PlayerSearch> {
  const refused: string[] = [];
  for (const command of commands) {
    const latencyS = await measureLatency(command);
    if (typeof latencyS === 'number') return { found: { command, latencyS }, refused };
    if (latencyS === 'refuses') refused.push(command.program);
  }
  return { found: null, refused };
}

/**
 * Plays silence as it becomes due, as in a drill, and measures how long it was on its way, in seconds. A player that
 * tells its latency is believed. Of any other, the time from the last sample to its end is taken: it ends when all that
 * waited was played. The way from the sound card to the ear is in neither.
 */
async function measureLatency(command: PlayerCommand): Promise<number | 'refuses' | 'missing'> {
  let said = '';
  const player = new Player(command, (text) => {
    said += text;
  });
  const trial = await playSilence(player);
  const told = command.latencyUs === null ? null : latencyTold(said, command.latencyUs);
  if (told !== null) player.stop();
  if (trial === 'ended') return player.isMissing ? 'missing' : 'refuses';
  if (told !== null) return LEAD_S + told;
  return (await timeToEnd(player)) ?? 'refuses';
}

async function playSilence(player: Player): Promise<'ended' | 'playing'> {
  let state: 'ended' | 'playing' = 'playing';
  void player.ended.then(() => {
    state = 'ended';
  });
  const clock = new SoundClock();
  const startS = nowS();
  while (state === 'playing' && nowS() - startS < TRIAL_S) {
    player.write(new Int16Array(clock.due(nowS())));
    await pause(STEP_MS);
  }
  return state;
}

async function timeToEnd(player: Player): Promise<number | null> {
  const lastS = nowS();
  player.finish();
  const late = pause(1000 * LONGEST_S, undefined, { ref: false }).then(() => undefined);
  const code = await Promise.race([player.ended, late]);
  if (code === undefined) player.stop();
  return code === 0 ? nowS() - lastS : null;
}

/** The middle one of the latencies that a player told, in seconds; null where it told none. */
function latencyTold(said: string, latencyUs: RegExp): number | null {
  const told = [...said.matchAll(latencyUs)].map((match) => Number(match[1]) / 1e6);
  return told.toSorted((a, b) => a - b)[Math.floor(told.length / 2)] ?? null;
}

const nowS = (): number => performance.now() / 1000;
