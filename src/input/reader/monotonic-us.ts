/**
 * Microseconds of the system's monotonic clock, as `process.hrtime` tells it: the same count in every thread of the
 * process, with an arbitrary start. (`performance.now` starts anew in each worker.)
 */
export function monotonicUs(): number {
  const [seconds, nanoseconds] = process.hrtime();
  return seconds * 1e6 + nanoseconds / 1e3;
}
