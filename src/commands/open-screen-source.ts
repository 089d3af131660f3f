import type { Observable } from 'rxjs';
import { FRAMES_PER_S } from '../screens/terminal-screen.ts';
import type { CommandContext } from './command.ts';
import type { DrillOptions } from './drill-options.ts';
import { seedOf } from './drill-practice.ts';
import { openRigSource, type RigSource } from './rig-source.ts';

/**
 * Opens what the driver asked for, to be drilled on the screen.
 *
 * @param pointer$ the mouse; null before there is a screen
 * @throws Problem where that cannot be had
 */
export function openScreenSource(
  options: DrillOptions,
  context: CommandContext,
  pointer$: Observable<number> | null,
): Promise<RigSource> {
  return openRigSource(options.source, {
    dataDir: context.dataDir,
    seed: seedOf(options),
    headless: false,
    // Between two frames nobody sees what a batch brings; a tone is heard sooner.
    ...(options.sound ? {} : { batchMs: 1000 / FRAMES_PER_S }),
    pointer$,
    setUp: async (devices) => {
      const { setUpBeforeDrill } = await import('./set-up-before-drill.ts');
      return setUpBeforeDrill(devices, context);
    },
  });
}
