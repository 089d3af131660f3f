import type { Feedback } from '../../drill/drill-view.ts';
import type { RoadMark } from '../../live/live-view.ts';

/** What stands beside the road on a rep: the brake mark only on shown reps, and nothing but boards on a day's first. */
export function seenMarks(marks: readonly RoadMark[], feedback: Feedback): readonly RoadMark[] {
  if (feedback === 'first-of-day') return marks.filter(({ kind }) => kind === 'board');
  return feedback === 'hidden' ? marks.filter(({ kind }) => kind !== 'brake') : marks;
}
