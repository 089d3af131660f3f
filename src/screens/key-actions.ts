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
const ESCAPE_WAIT_MS = 50;

/**
 * Keys by the terminal library's names. Esc counts only when nothing follows it for `ESCAPE_WAIT_MS`: what follows is the
 * rest of a split sequence, and none of it is a key. Enter is also reported as `return`, which is left out here.
 * @param scheduler virtual time for tests
 */
export function wholeKeys(
  keys$: Observable<string>,
  scheduler?: SchedulerLike,
): Observable<string> {
  return keys$.pipe(
    exhaustMap((key) => {
      if (key === 'return') return EMPTY;
      if (key !== 'escape') return of(key);
      return keys$.pipe(
        takeUntil(timer(ESCAPE_WAIT_MS, scheduler)),
        count(),
        filter((following) => following === 0),
        map(() => key),
      );
    }),
  );
}

/** The actions that keys ask for; others are left out. */
export function keyActions(
  keys$: Observable<string>,
  scheduler?: SchedulerLike,
): Observable<ScreenAction | TerminalAction> {
  return wholeKeys(keys$, scheduler).pipe(
    map((key) => KEY_ACTIONS.get(key)),
    filter((action) => action !== undefined),
  );
}
