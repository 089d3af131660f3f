import { readFileSync } from 'node:fs';
import { runDrill } from '../../../src/commands/drill-loop.ts';
import type { FinishedRep } from '../../../src/drill/drill-message.ts';
import type { DrillSetup } from '../../../src/drill/drill-setup.ts';
import { brakeStepLevel } from '../../../src/input/rig/brake-step-level.ts';
import { createRigDecoder } from '../../../src/input/rig/rig-decoder.ts';
import type { DriverName } from '../../../src/input/virtual/driver-preset.ts';
import { openVirtualSource } from '../../../src/input/virtual/open-virtual-source.ts';
import { virtualRig } from '../../../src/input/virtual/virtual-rig.ts';
import { overTime } from '../../../src/target/over-time.ts';
import { readTarget } from '../../../src/target/read-target.ts';
import type { Target } from '../../../src/target/target.ts';
import { setup } from '../../drill/drill-rig.ts';

/** Waits as short as the rules allow, so that a block takes a minute of the simulated driver's time. */
const BRISK: DrillSetup['timing'] = { countdownS: 1, holdS: 2, showS: 0, restS: 0.1 };

export function bundledTarget(id: string): Target {
  const file = new URL(`../../../profiles/targets/${id}.yaml`, import.meta.url);
  return overTime(readTarget(readFileSync(file, 'utf8'), `${id}.yaml`));
}

/** Reps of a simulated driver on the whole path: bytes, decoder, drill, score. */
export async function driveVirtual(
  preset: DriverName,
  seed: number,
  change: Partial<DrillSetup> = {},
): Promise<readonly FinishedRep[]> {
  const source = openVirtualSource({ preset, seed, pace: 'simulated' });
  const rig = virtualRig();
  const reps: FinishedRep[] = [];
  const plan = setup({ seed, timing: BRISK, brakeStepLevel: brakeStepLevel(rig), ...change });
  await runDrill(source, createRigDecoder(rig, source.devices), plan, {
    store: (rep) => void reps.push(rep),
    unattended: true,
  });
  await source.close();
  return reps;
}

export function medianScore(reps: readonly FinishedRep[]): number {
  const scores = reps.map(({ outcome }) => outcome?.score ?? Number.NaN).sort((a, b) => a - b);
  const middle = scores.length >> 1;
  return scores.length % 2 === 1 ? scores[middle]! : (scores[middle - 1]! + scores[middle]!) / 2;
}
