import type { LiveView } from '../../live/live-view.ts';

/** How much more pedal the target's peak takes than on cold brakes; nothing while it takes the same. */
export function fadeWords({ fade }: LiveView): readonly string[] {
  if (fade === null) return [];
  const [now, cold] = [fade.peakForceN.toFixed(0), fade.coldPeakForceN.toFixed(0)];
  return now === cold ? [] : [`brakes: needs ${now} N now, ${cold} N cold`];
}
