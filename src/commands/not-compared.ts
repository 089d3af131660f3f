import { median } from '../consistency/median.ts';
import type { Comparison } from '../drill/compare/comparison.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import { zoneSpeeds } from '../trace/log/zone-speeds.ts';
import { kmhFromMetresPerSecond } from '../units.ts';
import type { RigSide } from './compare-reps.ts';

/** Approaches further apart ask for another braking. */
const SAME_SPEED_SHARE = 0.05;
/** Slower rows cannot show a hit that takes a fifth of a second. */
const HIT_STEP_S = 0.025;

/** What the two sides do not tell of each other, a sentence each. */
export function notCompared(
  { summary }: ImportedTrace,
  zones: readonly LoggedZone[],
  { entryMps, isLive, target }: RigSide,
  { points }: Comparison,
): readonly string[] {
  const wheel = points.find(({ point }) => point === 'wheel to brake');
  return [
    'The brake point: both sides begin where the brake goes on.',
    ...speedSentences(zones, entryMps),
    ...(wheel?.difference === null || wheel === undefined
      ? [
          summary.steeringPositive === null
            ? 'The wheel: the log has no steering whose sign is known.'
            : 'The wheel: it hardly turns on one of the sides, or the rig has none.',
        ]
      : []),
    ...(summary.stepS > HIT_STEP_S
      ? [`The hit in detail: the log has a row every ${summary.stepS.toFixed(3)} s.`]
      : []),
    ...(isLive
      ? [
          'What the car let you do: both sides are held against one curve over time, whatever speed there was.',
        ]
      : []),
    `Grip, fuel, heat and traffic in the car; ${target.name} knows nothing of them.`,
  ];
}

function speedSentences(zones: readonly LoggedZone[], entryMps: number | null): string[] {
  const entries = zones.flatMap((zone) => zoneSpeeds(zone).entryMps ?? []);
  const middle = median(entries);
  if (middle === null) return ['Speed: the log has none.'];
  const range = Math.max(...entries) - Math.min(...entries);
  const kmh = (mps: number): string => `${Math.round(kmhFromMetresPerSecond(mps))} km/h`;
  const apart =
    range > 2 * SAME_SPEED_SHARE * middle
      ? [
          `Zones of one speed: they are entered at ${kmh(Math.min(...entries))} to ${kmh(Math.max(...entries))}; make sure that they are one corner.`,
        ]
      : [];
  if (entryMps === null) return [...apart, 'Speed: a target over time knows none.'];
  if (Math.abs(middle - entryMps) <= SAME_SPEED_SHARE * entryMps) return apart;
  return [...apart, `Speed: entered at ${kmh(middle)} in the car, ${kmh(entryMps)} on the rig.`];
}
