import type { ButtonAction } from '../trace/rig-batch.ts';
import type { RatingKey } from './self-rating.ts';

/** A button or paddle with a job, as the rig learned it. */
export interface LearnedButton {
  readonly action: ButtonAction;
  /** Name shown to the driver, for example `wheel button 4`. */
  readonly control: string;
}

/** What a driver may want done without a keyboard, in the words of set-up; paddles shift, so a car needs them. */
export const BUTTON_JOBS: readonly (readonly [ButtonAction, string])[] = [
  ['downshift', 'Downshift'],
  ['upshift', 'Upshift'],
  ['next', 'Go on to the next rep'],
  ['repeat', 'Repeat the rep'],
  ['pause', 'Pause'],
  ['feedback', 'Show or hide the own trace'],
  ['note', 'Mark the last rep for a note'],
  ['self-rating', 'Ask how each rep felt, or stop asking'],
  ['display', 'Open or close the display settings'],
  ['finish', 'Finish the block, then the practice'],
];

/** Those of a rig's buttons that have a job. */
export function learnedButtons(
  buttons: readonly { readonly action: ButtonAction | null; readonly control: string }[],
): readonly LearnedButton[] {
  return buttons.flatMap(({ action, control }) => (action === null ? [] : [{ action, control }]));
}

/** Jobs that no button has, by the action's name. */
export function withoutButton(buttons: readonly LearnedButton[]): readonly ButtonAction[] {
  return BUTTON_JOBS.map(([action]) => action).filter((action) => !has(buttons, action));
}

/** What has to be done by key, in words. */
export function buttonsText(buttons: readonly LearnedButton[]): string {
  const without = withoutButton(buttons);
  if (without.length === 0) return 'Every job has a button: no key is needed in a drill.';
  return `No button for ${without.join(', ')}: \`ebbline rig setup --buttons\` learns them; keys do the same.`;
}

/** Short name of the button for a job, for example `B4`; null where none was learned. */
export function buttonFor(buttons: readonly LearnedButton[], action: ButtonAction): string | null {
  const found = buttons.find((button) => button.action === action);
  return found === undefined ? null : shortName(found.control);
}

/** The key for a job, and its button where one was learned: `space or B4`. */
export function keyOrButton(
  key: string,
  buttons: readonly LearnedButton[],
  action: ButtonAction,
): string {
  const button = buttonFor(buttons, action);
  return button === null ? key : `${key} or ${button}`;
}

/**
 * Which button answers a question with three answers: the left paddle the low one, the right paddle the high one,
 * `next` the middle one; without paddles `repeat` and `feedback` take their place.
 */
export function answerButton(buttons: readonly LearnedButton[], key: RatingKey): ButtonAction {
  if (key === 'middle') return 'next';
  if (key === 'low') return has(buttons, 'downshift') ? 'downshift' : 'repeat';
  return has(buttons, 'upshift') ? 'upshift' : 'feedback';
}

/**
 * Which button moves through a list: the paddles up and down, `next` chooses; without a right paddle `repeat` goes
 * down. Null for a button that means nothing in a list.
 */
export function listKey(
  buttons: readonly LearnedButton[],
  action: ButtonAction | null,
): 'up' | 'down' | 'choose' | 'finish' | null {
  if (action === 'downshift') return 'up';
  if (action === listDown(buttons)) return 'down';
  if (action === 'next') return 'choose';
  return action === 'finish' ? 'finish' : null;
}

/** Which button goes down a list. */
export function listDown(buttons: readonly LearnedButton[]): ButtonAction {
  return has(buttons, 'upshift') ? 'upshift' : 'repeat';
}

function has(buttons: readonly LearnedButton[], action: ButtonAction): boolean {
  return buttons.some((button) => button.action === action);
}

function shortName(control: string): string {
  const number = /button (\d+)$/.exec(control)?.[1];
  return number === undefined ? control.replace(/^button at /, '') : `B${number}`;
}
