import type { LiveView } from '../../live/live-view.ts';
import { forceText, type TextUnits } from '../../unit-text.ts';

/** How much more pedal the target's peak takes than on cold brakes; nothing while it takes the same. */
export function fadeWords({ fade }: LiveView, units: TextUnits = 'metric'): readonly string[] {
  if (fade === null) return [];
  const [now, cold] = [forceText(fade.peakForceN, units), forceText(fade.coldPeakForceN, units)];
  return now === cold ? [] : [`brakes: needs ${now} now, ${cold} cold`];
}
