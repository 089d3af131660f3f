import { BUTTON_JOBS, buttonsText, learnedButtons } from '../../../drill/learned-buttons.ts';
import type { ButtonAction } from '../../../trace/rig-batch.ts';
import type { LearnedButton } from '../../hid/learn-button.ts';
import { describedField, deviceFields } from '../device-fields.ts';
import { placeText } from './axis-text.ts';
import { type FoundControl, findButton } from './find-control.ts';
import type { SetupDialogue } from './setup-dialogue.ts';
import type { WantedMovement } from './setup-terminal.ts';

/** Finds the button or paddle for each job by pressing it, and saves each. */
export async function setupButtons(dialogue: SetupDialogue): Promise<void> {
  dialogue.terminal.say(
    'Buttons: pull the paddle or press the button three times, then press Enter.',
  );
  for (const [action, job] of BUTTON_JOBS)
    await dialogue.step(action, async () => {
      while (!(await tryButton(dialogue, action, job))) dialogue.terminal.say('Once more.');
    });
  dialogue.terminal.say(buttonsText(learnedButtons(dialogue.draft.rig.buttons)));
}

/** Buttons that a simulated driver has to be told apart. */
const MOVEMENTS: Partial<Record<ButtonAction, WantedMovement>> = {
  downshift: 'left-paddle',
  next: 'next-button',
};

/** True where the job is settled: given to a button, or passed over. */
async function tryButton(
  dialogue: SetupDialogue,
  action: ButtonAction,
  job: string,
): Promise<boolean> {
  const { terminal, devices, draft, rest } = dialogue;
  const known = draft.button(action);
  const alone = known === null ? 'leaves it without' : `keeps ${placeText(known, devices)}`;
  const wanted = MOVEMENTS[action] ?? 'button';
  const { taped } = await dialogue.record(`${job}: Enter alone ${alone}.`, wanted);
  const found = findButton(devices, { rest, moved: taped, others: [] });
  if (found.kind === 'found') {
    await giveButton(dialogue, action, found);
    return true;
  }
  // A device that streams reports all the same when nothing was pressed.
  const isNothing = found.reason === 'no-reports' || found.reason === 'nothing-moved';
  terminal.say(isNothing ? `  ${known === null ? 'no button' : 'kept'}` : found.message);
  return isNothing;
}

/** Gives a button a job and keeps it. */
export async function giveButton(
  dialogue: SetupDialogue,
  action: ButtonAction,
  { device, learned }: FoundControl<LearnedButton>,
): Promise<void> {
  const { field, pressedCounts } = learned;
  const found = dialogue.devices[device]!;
  const place = { device: found.identity, field };
  const usage = describedField(deviceFields(found), field)?.usageId;
  const control = usage === undefined ? `button at bit ${field.bitOffset}` : `button ${usage}`;
  dialogue.draft.setButton(action, { ...place, pressedCounts, control });
  dialogue.terminal.say(`  ${placeText(place, dialogue.devices)}`);
  await dialogue.save();
}
