import type { DrillView } from '../drill/drill-view.ts';

/** True while the driver has to brake by feel: own trace and levels stay off the screen until the rep ends. */
export function isBlind(view: DrillView): boolean {
  return view.feedback !== 'shown' && (view.phase === 'cue' || view.phase === 'braking');
}

/** True while nothing on the screen may move but the count itself. */
export function isStill(view: DrillView): boolean {
  return view.phase === 'countdown';
}
