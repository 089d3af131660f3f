import type { Rig } from '../input/rig/rig.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import { Problem } from '../problem.ts';
import type { SourceWish } from './source-wish.ts';

/**
 * The rig that a source would be driven with, without opening any device.
 * @throws Problem where no rig was set up, or the recording does not name one
 */
export async function rigOfSource(wish: SourceWish, dataDir: string): Promise<Rig> {
  switch (wish.kind) {
    case 'virtual':
      return (await import('../input/virtual/virtual-rig.ts')).virtualRig();
    case 'pointer':
      return (await import('../input/pointer-rig.ts')).POINTER_RIG;
    case 'replay':
      return recordedRig(wish.file, dataDir);
    case 'hid':
    case 'any':
      return (await loadRig(dataDir)) ?? notSetUp();
  }
}

async function recordedRig(file: string, dataDir: string): Promise<Rig> {
  const { openReplaySource } = await import('../input/replay-source.ts');
  const source = await openReplaySource(file, { pace: 'fast' });
  const rig = source.rig ?? (await loadRig(dataDir, source.devices));
  await source.close();
  return rig ?? notSetUp();
}

function notSetUp(): never {
  throw new Problem('no rig is set up yet', {
    next: 'Run `ebbline rig setup` once, or say `--source virtual` for the simulated one.',
  });
}
