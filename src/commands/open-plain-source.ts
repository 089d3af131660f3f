import type { Rig } from '../input/rig/rig.ts';
import type { CommandContext } from './command.ts';
import type { DrillOptions } from './drill-options.ts';
import { seedOf } from './drill-practice.ts';
import { openRigSource, type RigSource } from './rig-source.ts';
import { setUpBeforeDrill } from './set-up-before-drill.ts';

/** Opens what the driver asked for, to be drilled in lines. @throws Problem where that cannot be had */
export async function openPlainSource(
  options: DrillOptions,
  context: CommandContext,
): Promise<RigSource> {
  const opened = await openRigSource(options.source, {
    dataDir: context.dataDir,
    seed: seedOf(options),
    headless: false,
    pointer$: null,
    setUp: (devices) => setUpBeforeDrill(devices, context),
  });
  return { ...opened, rig: withoutDisplay(opened.rig) };
}

/** There is no picture to be set. */
function withoutDisplay(rig: Rig): Rig {
  const buttons = rig.buttons.map((button) =>
    button.action === 'display' ? { ...button, action: null } : button,
  );
  return { ...rig, buttons };
}
