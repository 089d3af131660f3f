import type { Feedback } from '../../drill/drill-view.ts';
import type { LiveView } from '../../live/live-view.ts';
import { seenMarks } from './seen-marks.ts';

/** What a rep may give away: one by feel shows nothing of the driver's own, nor what the car makes of it, until it is over. */
export function seenLive(live: LiveView, feedback: Feedback): LiveView {
  const marks = seenMarks(live.marks, feedback);
  if (feedback === 'shown' || live.stage === 'over') return { ...live, marks };
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
