import type { LiveView } from '../../live/live-view.ts';

/** How much more pedal the target's peak takes than on cold brakes. */
export function fadeWords({ fade }: LiveView): readonly string[] {
  if (fade === null) return [];
  const { peakForceN, coldPeakForceN } = fade;
  return [`brakes: needs ${peakForceN.toFixed(0)} N now, ${coldPeakForceN.toFixed(0)} N cold`];
}
