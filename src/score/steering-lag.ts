import type { Track } from '../trace/track.ts';

/** A wheel that turns less is going straight. */
const LEAST_TURN_DEG = 5;

/**
 * When the wheel first passes half of its largest angle, either way, after the onset of braking.
 *
 * @returns record time, or null where the wheel hardly turned.
 */
export function halfSteering(steering: Track, onsetS: number): number | null {
  const angles = steering.value.map((angle, i) =>
    steering.timeS[i]! >= onsetS ? Math.abs(angle) : 0,
  );
  const largest = angles.reduce((a, b) => Math.max(a, b), 0);
  if (!(largest >= LEAST_TURN_DEG)) return null;
  const passed = angles.findIndex((angle) => angle >= largest / 2);
  return steering.timeS[passed] ?? null;
}
