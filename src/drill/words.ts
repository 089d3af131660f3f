import type { Feedback } from './drill-view.ts';
import { keyOrButton, type LearnedButton } from './learned-buttons.ts';

/** What the drill says to the driver: why it waits, what was lost, what does not count. */

export const FOOT_ON_BRAKE = 'Take your foot off the brake to start.';
export const BRAKE_UNKNOWN = 'Press the brake once: it has not reported yet.';
export const ABORTED_BY_DRIVER = 'Aborted by the driver.';
export const FIRST_OF_DAY_STAYS = 'First-of-day reps show no target.';
export const CARRY_OVER_STAYS = 'The reps of a carry-over check stay hidden.';

export const NO_REP_TO_MARK = 'No rep to mark yet.';

export function paused(buttons: readonly LearnedButton[]): string {
  const key = keyOrButton('p', buttons, 'pause');
  return `Paused. Press ${key}, or hold the clutch for two seconds, to go on.`;
}

export function displayOpen(buttons: readonly LearnedButton[]): string {
  return `The drill waits: ${keyOrButton('d', buttons, 'display')} closes the list.`;
}

export function repMarked(rep: number): string {
  return `Rep ${rep} of this practice marked: say why later with \`ebbline note add\`.`;
}

export function noteKept(rep: number): string {
  return `Note on rep ${rep} kept.`;
}

export function falseStart(beforeCueS: number): string {
  return `False start: on the brake ${beforeCueS.toFixed(1)} s before the cue.`;
}

export function feedbackChosen(chosen: Feedback | null): string {
  return chosen === null
    ? 'Feedback follows the schedule again.'
    : `From the next rep on: ${chosen}.`;
}

export function ratingChosen(asked: boolean): string {
  return asked ? 'You will be asked how each rep felt.' : 'You will not be asked how a rep felt.';
}

export function lostInRep(device: string): string {
  return `${device} was lost: this rep does not count.`;
}

export function waitingForDevices(devices: readonly string[]): string {
  return `Waiting for ${devices.join(' and ')}: plug it in again.`;
}
