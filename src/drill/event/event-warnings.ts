import { REP_TIMING } from '../drill-setup.ts';
import type { CircuitEvent } from './circuit-event.ts';
import { shortestGapS } from './road-timing.ts';

/** What is allowed and still hardly meant, or cannot be kept, one sentence each. */
export function eventWarnings({ zones }: CircuitEvent): readonly string[] {
  const leastS = shortestGapS(REP_TIMING);
  const short = zones.filter(({ toNext }) => toNext.kind === 'seconds' && toNext.gapS < leastS);
  if (short.length === 0) return [];
  return [shortGapText(short.map(({ corner }) => corner))];
}

/** What becomes of roads that the drill cannot drive as quickly. @param corners at the start of each; at least one */
export function shortGapText(corners: readonly string[]): string {
  const least = shortestGapS(REP_TIMING).toFixed(1);
  return `The drill needs ${least} s from a slowest point to the next brake point; after ${corners.join(', ')} the road is shorter than that.`;
}
