import type { RigDevice } from '../../rig-device.ts';
import type { Rig } from '../rig.ts';
import { saveRig } from '../rig-file.ts';
import type { RigDraft } from './rig-draft.ts';
import { draftDevice, resumeDraft, type SetupStep } from './setup-draft.ts';
import { dropSetupDraft, loadSetupDraft, saveSetupDraft } from './setup-draft-file.ts';

/** Keeps the rig as far as it is confirmed, and which steps are done, so that setting up can be left at any question. */
export interface SetupKeeper {
  save(rig: Rig): Promise<void>;
  isDone(step: SetupStep): boolean;
  done(step: SetupStep): Promise<void>;
  /** Everything was asked. */
  finish(): Promise<void>;
}

/** Keeps nothing: for trying it out. */
export const KEEPS_NOTHING: SetupKeeper = {
  save: async () => undefined,
  isDone: () => false,
  done: async () => undefined,
  finish: async () => undefined,
};

/** Keeps the rig alone, and asks everything. */
export function rigKeeper(dataDir: string): SetupKeeper {
  return { ...KEEPS_NOTHING, save: (rig) => saveRig(dataDir, rig) };
}

/**
 * Keeps the rig and the steps, and goes on where setting up was left.
 * @param say told where it goes on, and what became of the devices
 * @throws Problem where the folder cannot be read or written.
 */
export async function resumingKeeper(
  dataDir: string,
  devices: readonly RigDevice[],
  rig: RigDraft,
  say: (text: string) => void,
): Promise<SetupKeeper> {
  const left = await loadSetupDraft(dataDir);
  if (left === 'unreadable') say('How far setting up had come cannot be read: it starts anew.');
  const { done, changes } =
    left === null || left === 'unreadable'
      ? { done: [], changes: [] }
      : resumeDraft(left, devices, rig);
  if (done.length > 0)
    say(
      `Going on where setting up was left; done: ${done.map(stepText).join(', ')}. \`ebbline rig setup --restart\` asks everything.`,
    );
  for (const change of changes) say(change);
  const steps = new Set(done);
  return {
    save: (kept) => saveRig(dataDir, kept),
    isDone: (step) => steps.has(step),
    done: async (step) => {
      steps.add(step);
      await saveSetupDraft(dataDir, { done: [...steps], devices: devices.map(draftDevice) });
    },
    finish: () => dropSetupDraft(dataDir),
  };
}

function stepText(step: SetupStep): string {
  return step === 'driver' ? 'foot and footwear' : step;
}
