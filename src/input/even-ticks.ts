import { Observable } from 'rxjs';

/**
 * Ticks from the next turn of the event loop on, at even times: one that comes late does not move those after it, and
 * a period need not be a whole number of milliseconds. Each is up to a millisecond early, as timers count in whole ones.
 */
export function evenTicks(periodMs: number): Observable<void> {
  return new Observable((subscriber) => {
    let dueMs = performance.now();
    const tick = (): void => {
      subscriber.next();
      if (subscriber.closed) return;
      const nowMs = performance.now();
      dueMs = Math.max(dueMs + periodMs, nowMs);
      timer = setTimeout(tick, dueMs - nowMs);
    };
    let timer = setTimeout(tick, 0);
    return () => clearTimeout(timer);
  });
}
