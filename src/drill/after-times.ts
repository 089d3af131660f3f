import type { DrillModel } from './drill-model.ts';
import { timingAfter } from './event/timing-after.ts';
import { plannedRep } from './plan/planned-rep.ts';
import type { AfterTimes } from './rating-wait.ts';

/**
 * The times after a rep that ended at `endS` and whose result is held back for `holdS`. Where the driver's rating is
 * waited for the result waits with it, on the road of a lap until the next zone.
 */
export function afterTimes(model: DrillModel, endS: number, holdS: number): AfterTimes {
  const { setup, asksRating } = model;
  const { showS, restS } = timingAfter(model, holdS);
  const onRoad = plannedRep(model)?.zone.gapS !== undefined;
  const answeredAtS = endS + setup.timing.holdS;
  const waitS = asksRating ? setup.ratingWaitS : null;
  if (waitS !== null && onRoad) {
    const nextS = endS + holdS + showS + restS;
    return { revealAtS: nextS, restFromS: nextS, nextS, answeredAtS, onRoad };
  }
  const revealAtS = endS + Math.max(holdS, waitS ?? 0);
  const restFromS = revealAtS + showS;
  return { revealAtS, restFromS, nextS: restFromS + restS, answeredAtS, onRoad };
}
