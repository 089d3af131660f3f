import type { Fault } from './fault.ts';

/** Something to tell, and the points that it is compared by. */
export interface ToldFault {
  readonly lost: number;
  readonly fault: Fault;
}

/**
 * What is told of several things, in the one order that holds after a rep, after a block, in a brief and for tonight:
 * the one that cost most points. A speed far off at the slowest point comes before it, and then only what does not lead
 * the other way; unless what cost most is one to be told before all others.
 *
 * @param speed null where it was not far off
 * @returns what is told first, and behind a speed what may have led there; of as many points what stands first
 */
export function orderTold<One extends ToldFault>(
  told: readonly One[],
  speed: One | null,
): readonly One[] {
  const dearestFirst = told.toSorted((a, b) => b.lost - a.lost);
  const [dearest] = dearestFirst;
  if (speed === null || dearest?.fault.isFirst === true) return dearestFirst.slice(0, 1);
  const why = dearestFirst.find(
    ({ fault: { makes } }) => makes === null || makes === speed.fault.makes,
  );
  return why === undefined ? [speed] : [speed, why];
}
