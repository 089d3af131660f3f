import {
  count,
  EMPTY,
  exhaustMap,
  filter,
  map,
  type Observable,
  of,
  type SchedulerLike,
  takeUntil,
  timer,
} from 'rxjs';
import { KEY_ACTIONS, type ScreenAction, type TerminalAction } from './screen-action.ts';

/** How long a lone Esc may be the first byte of a sequence that a slow line has split. */
export const ESCAPE_WAIT_MS = 50;

/**
 * The actions that keys ask for. Esc counts only when nothing follows it for `ESCAPE_WAIT_MS`: what follows is the rest
 * of a split sequence, and none of it is a key.
 * @param scheduler virtual time for tests
 */
export function keyActions(
  keys$: Observable<string>,
  scheduler?: SchedulerLike,
): Observable<ScreenAction | TerminalAction> {
  return keys$.pipe(
    exhaustMap((key) => {
      const action = KEY_ACTIONS.get(key);
      if (action === undefined) return EMPTY;
      if (action !== 'close') return of(action);
      return keys$.pipe(
        takeUntil(timer(ESCAPE_WAIT_MS, scheduler)),
        count(),
        filter((following) => following === 0),
        map(() => action),
      );
    }),
  );
}
