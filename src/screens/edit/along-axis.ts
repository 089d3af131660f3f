import type { Target, TargetDomain } from '../../target/target.ts';
import type { PlotEnds } from '../plot-scale.ts';

/**
 * A picture runs from left to right as the driver does: over distance its axis is minus the metres to the slowest point.
 */
export function alongOf(domain: TargetDomain, at: number): number {
  return domain === 'time' ? at : -at;
}

/** The whole target with a little on both sides, as tall as a tenth above its peak or what the grip allows. */
export function endsOf({ domain, marks, peakLevel }: Target, mostLevel: number): PlotEnds {
  const places = [marks.rise, marks.brakeOff, marks.apex ?? marks.brakeOff].map((at) =>
    alongOf(domain, at),
  );
  const [from, to] = [Math.min(...places), Math.max(...places)];
  const around = 0.06 * (to - from);
  const top = 1.1 * Math.max(peakLevel, Math.min(mostLevel, 1.25 * peakLevel));
  return { from: from - around, to: to + around, bottom: 0, top };
}
