import type { Rig } from '../input/rig/rig.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import type { RigDevice } from '../input/rig-device.ts';
import { Problem } from '../problem.ts';
import type { CommandContext } from './command.ts';

/**
 * Sets devices up with the driver, in lines, before the screen is taken.
 * @throws Problem where the set-up was left before the brake was confirmed
 */
export async function setUpBeforeDrill(
  devices: readonly RigDevice[],
  context: CommandContext,
): Promise<Rig> {
  const names = devices.map(({ name }) => name).join(' and ');
  context.out(`Found ${names}, not set up yet. Three movements, a minute, once.\n\n`);
  const { command } = await import('./rig-setup.ts');
  await command.run({ positionals: [], values: { short: true } }, context);
  const rig = await loadRig(context.dataDir, devices);
  if (rig !== null) return rig;
  throw new Problem('the brake is not set up yet', {
    next: 'Run `ebbline rig setup` again, or drive the virtual rig with `--source virtual`.',
  });
}
