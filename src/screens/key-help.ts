/** Help on what to press. */
const KEY_HELP: readonly (readonly [string, string])[] = [
  ['space', 'next: start the rep or the next block'],
  ['r', 'repeat this rep'],
  ['p', 'pause, go on; also: hold the clutch for two seconds'],
  ['f', 'feedback: own trace shown, or hidden until the rep ends'],
  ['n', 'note: mark the last rep; between reps also type a few words'],
  ['s', 'say how each rep felt, by 1, 2, 3, before its result; or stop'],
  ['d', 'display: layout, preview, zoom, corridor, theme: l a z c t'],
  ['v', 'picture in the rest and after a block: the next one'],
  ['q', 'finish; finished reps are kept'],
  ['Esc', 'close this help; Ctrl-L draws again, Ctrl-Z goes to the shell'],
];

const IN_BAND = ['in band', 'nothing to tell: less than is felt, or than you differ'] as const;

/** Help on the drill: what stands before the second column is a key or a sign on the screen. */
export const DRILL_HELP: readonly (readonly [string, string])[] = [
  ...KEY_HELP,
  ['dashes', 'target; dots: its corridor; thick: you; upright line: now'],
  ['zoom', 'the final release, where a row is taller than its corridor'],
  ['release', 'part of the score: how close the release was to the target'],
  ['hit', 'part of the score: the first application, its peak and rise'],
  ['smooth', 'part of the score: a release without going back up'],
  ['re-applied', 'times the pressure went back up during the release'],
  ['clear, likely', 'how sure a cause is: the share of reps that have it, 95 %'],
  ['rms', 'root mean square difference, in % of full scale'],
  IN_BAND,
];

/** Help on the drill with the live car. */
export const LIVE_HELP: readonly (readonly [string, string])[] = [
  ...KEY_HELP,
  ['you', 'the bar: a mark that touches it is where the car is'],
  ['150, 100', 'boards, in metres before turn-in; large as you pass one'],
  ['two wide', 'the brake mark; hanging: the mark of the coach; low: turn-in'],
  ['dashes', 'target; dots: its corridor; thick: you; upright line: now'],
  ['F, R', 'front or rear wheels locked, for as long as the letter goes on'],
  ['A, D, U', 'anti-lock at work; down a gear; up a gear'],
  ['grip used', 'of what the tyres of that axle have; over 100 % is too much'],
  ['braked', 'where, against the brake point of the target'],
  ['slowest', 'slowest speed, against the target'],
  IN_BAND,
];

/** Help on the picker. */
export const PICKER_HELP: readonly (readonly [string, string])[] = [
  ['up, down', 'choose a target; also k and j'],
  ['enter', 'drill it; also space'],
  ['q', 'quit'],
  ['Esc', 'close this help'],
  ['Ctrl-L', 'draw the screen again'],
  ['Ctrl-Z', 'leave for the shell; `fg` comes back'],
];
