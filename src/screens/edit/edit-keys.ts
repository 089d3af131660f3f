import type { EditMessage } from '../../target/edit/edit-message.ts';

/** What the keys of the editor ask for, by the terminal library's names of keys. */
export const EDIT_KEYS: ReadonlyMap<string, EditMessage> = new Map<string, EditMessage>([
  ['tab', { kind: 'choose', by: 1 }],
  ['S-tab', { kind: 'choose', by: -1 }],
  ['.', { kind: 'choose', by: 1 }],
  [',', { kind: 'choose', by: -1 }],
  ['right', { kind: 'move', by: 1, reach: 'alone' }],
  ['left', { kind: 'move', by: -1, reach: 'alone' }],
  ['S-right', { kind: 'move', by: 1, reach: 'with-rest' }],
  ['S-left', { kind: 'move', by: -1, reach: 'with-rest' }],
  ['>', { kind: 'move', by: 1, reach: 'with-rest' }],
  ['<', { kind: 'move', by: -1, reach: 'with-rest' }],
  ['up', { kind: 'level', by: 1 }],
  ['down', { kind: 'level', by: -1 }],
  ['+', { kind: 'step', by: 1 }],
  ['=', { kind: 'step', by: 1 }],
  ['-', { kind: 'step', by: -1 }],
  ['a', { kind: 'add-knot' }],
  ['d', { kind: 'remove' }],
  ['delete', { kind: 'remove' }],
  ['b', { kind: 'bleed' }],
  ['f', { kind: 'form' }],
  ['u', { kind: 'undo' }],
  ['r', { kind: 'redo' }],
  ['s', { kind: 'save' }],
  ['C-s', { kind: 'save' }],
  ['q', { kind: 'quit' }],
  ['y', { kind: 'yes' }],
  ['n', { kind: 'no' }],
  ['?', { kind: 'help' }],
  ['h', { kind: 'help' }],
  ['f1', { kind: 'help' }],
  ['escape', { kind: 'close' }],
]);

/** Keys in the footer of the editor. */
export const EDIT_FOOTER =
  'tab point  arrows move  + - step  a add  d out  u undo  s save  ? help  q quit';

/** Help on the editor. */
export const EDIT_HELP: readonly (readonly [string, string])[] = [
  ['tab', 'next point, then what has no place: shape, corridor; S-tab back'],
  ['left, right', 'the point earlier or later; all others stay where they are'],
  ['< >', 'the same with the curve behind it; also shift and arrows'],
  ['up, down', 'more or less pressure at the point'],
  ['+ -', 'coarser or finer steps'],
  ['a', 'a knot behind the point; another shape becomes knots first'],
  ['d', 'takes out the knot, or the bleed at its end'],
  ['b', 'a straight-line bleed behind the plateau'],
  ['f', 'the next shape of the release'],
  ['u, r', 'undo; do again'],
  ['s', 'save: comments and order of keys stay as they are'],
  ['q', 'quit; asks where something is not saved'],
  ['thick line', 'the target; sparse dots around it: its corridor'],
  ['dashes', 'what the grip allows, with --car and --corner'],
  ['% of grip', 'mean use of the axle with less left; over: where it slides'],
  ['arrives, can', 'speed with this curve; speed that the corner carries'],
  ['Ctrl-Z', 'leave for the shell; `fg` comes back'],
];
