import { filter, map, type Observable, share } from 'rxjs';
import { DISPLAY_PARTS } from '../drill/display/display-settings.ts';
import type { KeyAction } from '../drill/drill-message.ts';
import type { NoteKey } from '../drill/note-typing.ts';
import { noteKey } from '../screens/note-keys.ts';
import { KEY_ACTIONS, type ScreenAction } from '../screens/screen-action.ts';

/** Keys of the screen that mean something to the drill itself. */
const DRILL_KEYS: ReadonlySet<string> = new Set<ScreenAction>([
  'next',
  'repeat',
  'pause',
  'feedback',
  'note',
  'finish',
  'self-rating',
  'low',
  'middle',
  'high',
  'display',
  ...DISPLAY_PARTS,
  'up',
  'down',
  'choose',
  'close',
]);

/** The keys of a drill: what they ask for, or what they type. */
interface RoutedKeys {
  readonly keys$: Observable<KeyAction>;
  readonly typed$: Observable<NoteKey>;
}

/** Each key goes one way only, as it is when it comes: the key that opens a note is no part of it. */
export function routedKeys(names$: Observable<string>, isTyping: () => boolean): RoutedKeys {
  const keys$ = names$.pipe(
    map((name) => ({ name, typing: isTyping() })),
    share(),
  );
  return {
    keys$: keys$.pipe(
      map(({ name, typing }) => (typing ? undefined : KEY_ACTIONS.get(name))),
      filter((action): action is KeyAction => action !== undefined && DRILL_KEYS.has(action)),
    ),
    typed$: keys$.pipe(
      map(({ name, typing }) => (typing ? noteKey(name) : null)),
      filter((key) => key !== null),
    ),
  };
}
