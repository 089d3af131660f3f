import type { Feedback } from '../../drill/drill-view.ts';
import type { LiveView } from '../../live/live-view.ts';
import { seenMarks } from './seen-marks.ts';

/**
 * What a rep may give away: one by feel shows nothing of the driver's own, nor what the car made of it, before the
 * own trace may be seen.
 */
export function seenLive(live: LiveView, feedback: Feedback): LiveView {
  const marks = seenMarks(live.marks, feedback);
  const isRevealed = live.stage === 'over' && live.level.own !== null;
  if (feedback === 'shown' || isRevealed) return { ...live, marks };
  return {
    ...live,
    marks,
    level: { ...live.level, own: null },
    steeringDeg: { ...live.steeringDeg, own: null },
    events: [],
    frontUse: null,
    rearUse: null,
    locked: null,
  };
}
