import type { DisplayPart } from '../drill/display/display-settings.ts';

/** What a key asks for. Commands decide what it means where they are; the terminal's own keys never get here. */
export type ScreenAction =
  | 'next'
  | 'repeat'
  | 'pause'
  | 'feedback'
  | 'note'
  | 'help'
  | 'finish'
  | 'self-rating'
  | 'low'
  | 'middle'
  | 'high'
  | 'display'
  | DisplayPart
  | 'up'
  | 'down'
  | 'choose'
  /** Esc: closes the top layer, never more. */
  | 'close';

/** What a key asks of the terminal itself. */
export type TerminalAction = 'interrupt' | 'suspend' | 'redraw';

/** Actions by the terminal library's names of keys. Enter is also reported as `return`, which is left out here. */
export const KEY_ACTIONS: ReadonlyMap<string, ScreenAction | TerminalAction> = new Map([
  ['space', 'next'],
  ['r', 'repeat'],
  ['p', 'pause'],
  ['f', 'feedback'],
  ['n', 'note'],
  ['?', 'help'],
  ['h', 'help'],
  ['f1', 'help'],
  ['q', 'finish'],
  ['s', 'self-rating'],
  ['1', 'low'],
  ['2', 'middle'],
  ['3', 'high'],
  ['d', 'display'],
  ['l', 'layout'],
  ['a', 'preview'],
  ['z', 'zoom'],
  ['c', 'corridor'],
  ['t', 'theme'],
  ['v', 'picture'],
  ['up', 'up'],
  ['k', 'up'],
  ['down', 'down'],
  ['j', 'down'],
  ['enter', 'choose'],
  ['escape', 'close'],
  ['C-c', 'interrupt'],
  ['C-z', 'suspend'],
  ['C-l', 'redraw'],
]);

const TERMINAL_ACTIONS: ReadonlySet<string> = new Set(['interrupt', 'suspend', 'redraw']);

/** True for what a command has to deal with. */
export function isScreenAction(action: ScreenAction | TerminalAction): action is ScreenAction {
  return !TERMINAL_ACTIONS.has(action);
}

/** True for a key that is not the terminal's own. */
export function isNoTerminalKey(name: string): boolean {
  const action = KEY_ACTIONS.get(name);
  return action === undefined || isScreenAction(action);
}
