import type { DrillView } from '../../drill/drill-view.ts';
import type { LiveView } from '../../live/live-view.ts';

/** What the driver has to do with the live car now; null where the drill's own words serve. */
export function livePrompt(view: DrillView, live: LiveView): string | null {
  const waits = ['paused', 'device-lost', 'summary'].includes(view.phase);
  if (waits || live.stage === 'over') return null;
  if (live.stage === 'waiting') return 'Foot off the brake: the car rolls by itself.';
  if (view.feedback === 'first-of-day')
    return 'First of the day: brake as you would on an out-lap.';
  if (live.stage === 'approach')
    return view.feedback === 'shown'
      ? 'Brake where the brake mark meets you.'
      : 'By feel: brake at your own mark.';
  if (view.feedback === 'hidden') return 'By feel: your trace is shown when the rep is over.';
  return live.locked === null ? '' : `Locked, ${live.locked}: ease, re-apply, carry on.`;
}
