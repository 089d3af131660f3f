import { performance } from 'node:perf_hooks';
import type { ButtonAction } from '../../../trace/rig-batch.ts';
import { deviceFields } from '../device-fields.ts';
import { sameDevice } from '../same-device.ts';
import { findButton } from './find-control.ts';
import type { Taped } from './report-tape.ts';
import { giveButton } from './setup-buttons.ts';
import type { SetupDialogue } from './setup-dialogue.ts';
import type { WantedMovement } from './setup-terminal.ts';

/** Long enough to find a button on a wheel by feel, short enough for who has none. Common practice, no source. */
const WAIT_S = 8;

const JOBS: readonly (readonly [ButtonAction, string, WantedMovement])[] = [
  ['next', 'to start a rep or a block', 'next-button'],
  ['repeat', 'to repeat a rep', 'button'],
  ['pause', 'to pause', 'button'],
];

/**
 * Offers the buttons with which a drill needs no keyboard, one press each. It passes by on its own: the first job that
 * nothing is pressed for ends it. Not offered where no device can have a button, or `next` has one.
 */
export async function setupButtonsShort(dialogue: SetupDialogue): Promise<void> {
  const { devices, draft, terminal } = dialogue;
  const known = draft.button('next');
  if (known !== null && devices.some(({ identity }) => sameDevice(identity, known.device))) return;
  if (!devices.some(mayHaveButtons)) return;
  terminal.say(
    `Last, if you like: wheel buttons, so that no key is needed. Enter, or ${WAIT_S} seconds without a press, leaves them out.`,
  );
  const pressed: Taped[] = [];
  for (const [action, purpose, wanted] of JOBS) {
    const taped = await learnPress(dialogue, { action, purpose, wanted, pressed });
    if (taped === null) return;
    pressed.push(taped);
  }
}

function mayHaveButtons(device: SetupDialogue['devices'][number]): boolean {
  const fields = deviceFields(device);
  return fields.length === 0 || fields.some(({ bitSize }) => bitSize === 1);
}

interface Job {
  readonly action: ButtonAction;
  readonly purpose: string;
  readonly wanted: WantedMovement;
  /** Reports while the buttons of earlier jobs were pressed: they keep their jobs. */
  readonly pressed: readonly Taped[];
}

/** Reports of the press that was learned, null where there was none. */
async function learnPress(
  dialogue: SetupDialogue,
  { action, purpose, wanted, pressed }: Job,
): Promise<Taped | null> {
  const { terminal, devices, tape, rest } = dialogue;
  const find = (): ReturnType<typeof findButton> =>
    findButton(devices, { rest, moved: tape.take(), others: pressed });
  tape.start();
  const endMs = performance.now() + 1000 * WAIT_S;
  const isOver = (): boolean => find().kind === 'found' || performance.now() >= endMs;
  await terminal.askUntil(`Press the button ${purpose}, and let it go.`, isOver, wanted);
  const found = find();
  if (found.kind === 'found') {
    await giveButton(dialogue, action, found);
    return tape.take();
  }
  if (found.reason === 'several-moved') terminal.say(found.message);
  return null;
}
