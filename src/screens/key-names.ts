import {
  buttonFor,
  keyOrButton,
  type LearnedButton,
  listDown,
  withoutButton,
} from '../drill/learned-buttons.ts';
import type { ButtonAction } from '../trace/rig-batch.ts';
import { remembered } from './remembered.ts';
import { textWidth } from './write-text.ts';

type HelpLine = readonly [key: string, text: string];

const FOOTER: readonly (readonly [key: string, word: string, action: ButtonAction | null])[] = [
  ['space', 'next', 'next'],
  ['r', 'repeat', 'repeat'],
  ['p', 'pause', 'pause'],
  ['f', 'feedback', 'feedback'],
  ['n', 'note', 'note'],
  ['?', 'help', null],
  ['q', 'finish', 'finish'],
];

const BY_KEY: ReadonlyMap<string, ButtonAction> = new Map([
  ...FOOTER.flatMap(([key, , action]) => (action === null ? [] : [[key, action] as const])),
  ['s', 'self-rating'],
  ['d', 'display'],
]);

/** The drill's footer: keys with the buttons that do the same, as far as they fit; then the buttons come first. */
export const drillKeys: (buttons: readonly LearnedButton[], width: number) => string = remembered(
  (buttons: readonly LearnedButton[], width: number) => {
    const line = (name: (key: string, button: string) => string): string =>
      FOOTER.map(([key, word, action]) => {
        const button = action === null ? null : buttonFor(buttons, action);
        return `${button === null ? key : name(key, button)} ${word}`;
      }).join('  ');
    const lines = [line((key, button) => `${key}/${button}`), line((_, button) => button)];
    return lines.find((text) => textWidth(text) <= width) ?? line((key) => key);
  },
);

/** The picker's footer, with the buttons that do the same. */
export function pickerKeys(buttons: readonly LearnedButton[], width: number): string {
  const beside = (key: string, action: ButtonAction): string => keyOrButton(key, buttons, action);
  const down = listDown(buttons);
  const text = [
    `${beside('up', 'downshift')}, ${beside('down', down)} choose`,
    `${beside('enter', 'next')} drill`,
    '? help',
    `${beside('q', 'finish')} quit`,
  ].join('  ');
  return textWidth(text) <= width ? text : 'up, down choose  enter drill  ? help  q quit';
}

/** Help with the learned buttons beside their keys, and below the keys what has none. */
export function withButtons(
  help: readonly HelpLine[],
  buttons: readonly LearnedButton[],
): readonly HelpLine[] {
  const named = help.map(([key, text]): HelpLine => {
    const action = BY_KEY.get(key);
    const button = action === undefined ? null : buttonFor(buttons, action);
    return [button === null ? key : `${key}, ${button}`, text];
  });
  const after = help.findIndex(([key]) => key === 'Esc');
  return [...named.slice(0, after), ...lacking(buttons), ...named.slice(after)];
}

/** Paddles are for shifting: a rig without them lacks nothing here. */
function lacking(buttons: readonly LearnedButton[]): readonly HelpLine[] {
  const without = withoutButton(buttons);
  const jobs = [...BY_KEY.values()];
  const missing = jobs.filter((action) => without.includes(action));
  const there = jobs.filter((action) => !without.includes(action));
  if (missing.length === 0) return [];
  const allBut = there.length === 0 ? 'none learned yet' : `all but ${there.join(', ')}`;
  const what = missing.length > there.length ? allBut : missing.join(', ');
  return [['no button', `${what}: \`rig setup --buttons\``]];
}
