import type { DrillView } from '../drill/drill-view.ts';
import { soundCues } from '../drill/sound-cues.ts';
import type { CommandContext } from './command.ts';

/** Sound beside a drill; nothing is heard where it was not asked for or nothing can play it. */
export interface DrillSound {
  /** Lets a view be heard. */
  follow(view: DrillView): void;
  close(): void;
}

const SILENT: DrillSound = { follow: () => {}, close: () => {} };

/** Looks for a player and says what was found, and how late its sound comes. */
export async function openDrillSound(
  isAsked: boolean,
  context: CommandContext,
): Promise<DrillSound> {
  if (!isAsked) return SILENT;
  const [{ findPlayer }, { SoundOutput }, { PLAYER_COMMANDS }] = await Promise.all([
    import('../sound/find-player.ts'),
    import('../sound/sound-output.ts'),
    import('../sound/player-command.ts'),
  ]);
  const { found } = await findPlayer();
  if (found === null) {
    const names = PLAYER_COMMANDS.map(({ program }) => program).join(', ');
    context.err(
      `No sound: none of ${names} plays anything here; \`ebbline doctor\` says what to do. The drill goes on without.\n`,
    );
    return SILENT;
  }
  const lateMs = Math.round(found.latencyS * 1000);
  context.err(
    `Sound by ${found.command.program}, heard ${lateMs} ms late; hidden reps are silent.\n`,
  );
  const output = new SoundOutput(found);
  let before: DrillView | null = null;
  return {
    follow: (view) => {
      output.hear(soundCues(view, before));
      before = view;
    },
    close: () => output.close(),
  };
}
