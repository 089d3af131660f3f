import type { Track } from '../../trace/track.ts';

/** Share of the largest angle at which the wheel counts as turned in; less is a correction on the straight. */
const TURNED_SHARE = 0.1;
/** A wheel that turns less than this did not turn in. */
const LEAST_ANGLE_DEG = 10;
/** The slowest point comes soon after the brake is off. */
const AFTER_OFF_S = 0.5;

/**
 * When the wheel first passes a tenth of its largest angle between the onset and shortly after brake off, for good.
 * Null without a wheel and where it hardly moves.
 */
export function turnInOf(steering: Track | null, onsetS: number, brakeOffS: number): number | null {
  if (steering === null) return null;
  const inside = indicesBetween(steering, onsetS, brakeOffS + AFTER_OFF_S);
  const largest = inside.reduce((most, i) => further(most, steering.value[i]!), 0);
  if (Math.abs(largest) < LEAST_ANGLE_DEG) return null;
  const place = inside.findIndex(
    (i) => steering.value[i]! * Math.sign(largest) >= TURNED_SHARE * Math.abs(largest),
  );
  return place <= 0 ? null : steering.timeS[inside[place]!]!;
}

function further(a: number, b: number): number {
  return Math.abs(b) > Math.abs(a) ? b : a;
}

function indicesBetween({ timeS }: Track, fromS: number, toS: number): number[] {
  return [...timeS.keys()].filter((i) => timeS[i]! >= fromS && timeS[i]! <= toS);
}
