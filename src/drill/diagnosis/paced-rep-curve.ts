import { pacedClock } from '../../score/paced-target.ts';
import type { RepScore } from '../../score/rep-score.ts';
import type { PacedStretch } from '../../target/paced-stretch.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { BlockGrid } from './block-grid.ts';

/** The level of a rep paced by the steering on the grid of its target: at each place when the wheel first got there. */
export function pacedRepCurve(
  record: RepRecord,
  { keyPoints }: Pick<RepScore, 'keyPoints'>,
  { target, fromS, stepS, onsetS }: BlockGrid,
  stretch: PacedStretch,
): Float64Array {
  const { timeS, value } = record.brake;
  const originS = keyPoints.onsetS - onsetS;
  const clock = pacedClock(record, stretch, originS);
  let next = 0;
  return target.map((_, i) => {
    const atS = originS + clock.timeOf(fromS + i * stepS);
    // a value holds until the next one
    while (next < timeS.length && timeS[next]! <= atS) next++;
    return next > 0 ? value[next - 1]! : 0;
  });
}
