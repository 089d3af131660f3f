import type { RepScore } from '../../score/rep-score.ts';
import type { Track } from '../../trace/track.ts';
import type { BlockGrid } from './block-grid.ts';

/** The rep's brake level on the grid of its target, moved so that both begin to brake at the same moment. */
export function repCurve(
  { timeS, value }: Track,
  { keyPoints }: Pick<RepScore, 'keyPoints'>,
  { target, fromS, stepS, onsetS }: BlockGrid,
): Float64Array {
  const originS = keyPoints.onsetS - onsetS + fromS;
  let next = 0;
  return target.map((_, i) => {
    // a value holds until the next one
    while (next < timeS.length && timeS[next]! <= originS + i * stepS) next++;
    return next > 0 ? value[next - 1]! : 0;
  });
}
