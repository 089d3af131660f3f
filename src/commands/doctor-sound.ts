import type { PlayerSearch } from '../sound/find-player.ts';
import { PLAYER_COMMANDS } from '../sound/player-command.ts';
import { type Finding, works } from './doctor-checks.ts';

/** Sound is an extra: without a player `drill --sound` goes on in silence, so that nothing is broken. */
export function checkSound(
  { found, refused }: PlayerSearch,
  platform: NodeJS.Platform = process.platform,
): Finding {
  const check = 'sound';
  if (found !== null) {
    const { command, latencyS } = found;
    const lateMs = Math.round(1000 * latencyS);
    return works(check, `\`drill --sound\` plays by ${command.program}, heard ${lateMs} ms late`);
  }
  const verdict = 'limited';
  if (refused.length > 0) {
    return {
      check,
      verdict,
      found: `installed, but playing nothing: ${refused.join(', ')}`,
      fix: 'Start the sound server, or plug a sound card in and let this user play on it (on Linux one who is in the group audio, as `id` shows, or who is logged in at the screen); until then `drill --sound` is silent.',
    };
  }
  return {
    check,
    verdict,
    found: `no player: none of ${PLAYER_COMMANDS.map(({ program }) => program).join(', ')}`,
    fix: `${howToGetOne(platform)} Until then \`drill --sound\` is silent.`,
  };
}

function howToGetOne(platform: NodeJS.Platform): string {
  if (platform === 'linux')
    return 'On Debian `sudo apt install pulseaudio-utils` brings pacat for a sound server, `sudo apt install alsa-utils` aplay for a bare card.';
  return 'Install SoX and have its `play` on the PATH (not tried on this system).';
}
