import type { DrivenPlace } from './driven-curve.ts';

/** A stretch of a target's own axis over which an axle is asked for more grip than there is. */
interface GripSpan {
  readonly axle: 'front' | 'rear';
  readonly from: number;
  readonly to: number;
  /** Largest use of grip in it. */
  readonly most: number;
}

/** What is within the corridor's 5 % is at the limit and not over it. */
export const OVER_GRIP = 1.05;
/** Shorter ones are nothing to a tyre, which needs half a turn to answer. */
const SHORTEST_PLACES = 4;

/** Where each axle is over its grip, in driving order. */
export function gripSpans(places: readonly DrivenPlace[]): readonly GripSpan[] {
  const spans = [...spansOf(places, 'front'), ...spansOf(places, 'rear')];
  return spans.sort((a, b) => a.first - b.first).map(({ first: _, ...span }) => span);
}

function spansOf(
  places: readonly DrivenPlace[],
  axle: GripSpan['axle'],
): (GripSpan & { readonly first: number })[] {
  const use = places.map(({ frontUse, rearUse }) => (axle === 'front' ? frontUse : rearUse));
  const starts = use.flatMap((each, i) =>
    each > OVER_GRIP && !((use[i - 1] ?? 0) > OVER_GRIP) ? [i] : [],
  );
  return starts.flatMap((first) => {
    const end = use.findIndex((each, i) => i > first && !(each > OVER_GRIP));
    const last = (end === -1 ? use.length : end) - 1;
    if (last - first + 1 < SHORTEST_PLACES) return [];
    const most = Math.max(...use.slice(first, last + 1));
    return [{ axle, from: places[first]!.at, to: places[last]!.at, most, first }];
  });
}

/** Mean use of the axle that has less left, by part of the zone; null where nobody brakes there. */
interface MeanUse {
  /** From the peak to turn-in. */
  readonly straight: number | null;
  /** From turn-in to brake off. */
  readonly turning: number | null;
}

/** How much of the grip is used while braking, once the peak has been reached. */
export function meanUse(
  places: readonly DrivenPlace[],
  isPastPeak: (at: number) => boolean,
): MeanUse {
  const braking = places.filter(({ at, level }) => level > 0 && isPastPeak(at));
  const mean = (part: readonly DrivenPlace[]): number | null => {
    const sum = part.reduce((total, place) => total + Math.min(2, mostUse(place)), 0);
    return part.length === 0 ? null : sum / part.length;
  };
  return {
    straight: mean(braking.filter(({ sM }) => sM < 0)),
    turning: mean(braking.filter(({ sM }) => sM >= 0)),
  };
}

/** Of the axle that has less left. */
function mostUse({ frontUse, rearUse }: DrivenPlace): number {
  return Math.max(frontUse, rearUse);
}
