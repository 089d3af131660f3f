import type { Rig } from '../input/rig/rig.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import type { RigDevice } from '../input/rig-device.ts';
import { Problem } from '../problem.ts';
import type { CommandContext } from './command.ts';

/** The short set-up. @returns its exit code, which is 0 where it was not stopped */
async function shortSetUp(context: CommandContext): Promise<number> {
  const { command } = await import('./rig-setup.ts');
  return command.run({ positionals: [], values: { short: true } }, context);
}

/**
 * Sets devices up with the driver, in lines, before the screen is taken.
 * @throws Problem where the driver stopped it, and where the brake was not confirmed
 */
export async function setUpBeforeDrill(
  devices: readonly RigDevice[],
  context: CommandContext,
  setUp: (context: CommandContext) => Promise<number> = shortSetUp,
): Promise<Rig> {
  const names = devices.map(({ name }) => name).join(' and ');
  context.out(`Found ${names}, not set up yet. Three movements, a minute, once.\n\n`);
  // Who stops the set-up wants to stop, even where the brake is enough to drive with.
  if ((await setUp(context)) !== 0)
    throw new Problem('the drill was not begun, for its set-up was stopped', {
      next: 'Start again when you like: what was confirmed is kept.',
    });
  const rig = await loadRig(context.dataDir, devices);
  if (rig !== null) return rig;
  throw new Problem('the brake is not set up yet', {
    next: 'Run `ebbline rig setup` again, or drive the virtual rig with `--source virtual`.',
  });
}
