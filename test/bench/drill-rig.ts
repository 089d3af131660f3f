import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Rig } from '../../src/input/rig/rig.ts';
import { saveRig } from '../../src/input/rig/rig-file.ts';
import type { Size } from '../../src/screens/cell-grid.ts';
import type { DeviceProcess } from '../live/device-process.ts';
import type { LoopDevice } from '../live/loop-process.ts';
import { PseudoTerminal } from './pseudo-terminal.ts';
import { FRAME_END } from './seen-levels.ts';

const MAIN = new URL('../../dist/bin/ebbline.js', import.meta.url).pathname;

/** Pedals and a wheel that a process plays, set up as a rig. */
export interface DrillRig {
  readonly player: DeviceProcess;
  readonly rig: Rig;
  /** The pedals, then the wheel, as a program that reads devices itself wants them. */
  readonly devices: readonly [LoopDevice, LoopDevice];
  /** What programs need in their environment to find the devices. */
  readonly env: NodeJS.ProcessEnv;
  close(): Promise<void>;
}

/** A drill that has drawn its first frame, for a driver who is new here: the first reps are shown. */
export interface RunningDrill {
  readonly terminal: PseudoTerminal;
  close(): Promise<void>;
}

/** Starts the built program on the rig's devices. */
export async function startDrill(
  { rig, env }: DrillRig,
  size: Size,
  options: readonly string[] = [],
): Promise<RunningDrill> {
  const dataDir = mkdtempSync(join(tmpdir(), 'ebbline-bench-drill-'));
  await saveRig(dataDir, rig);
  const drill = ['drill', 'hairpin', '--source', 'hid', '--seed', '1', '--data-dir', dataDir];
  const terminal = new PseudoTerminal([process.execPath, MAIN, ...drill, ...options], size, env);
  await terminal.until((text) => text.includes(FRAME_END));
  return {
    terminal,
    close: async () => {
      await terminal.close();
      rmSync(dataDir, { recursive: true });
    },
  };
}
