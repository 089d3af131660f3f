import { yamlLibrary } from '../../profile/yaml-library.ts';
import { degreesFromRadians } from '../../units.ts';
import { roundedTo } from '../rounded.ts';
import type { DistanceTargetFile } from '../target-file.ts';
import type { DerivedTarget } from './derive-target.ts';
import { derivedForText } from './derived-for.ts';
import { type ZonePhases, zonePhases } from './zone-phases.ts';

const LONGEST_NAME = 40;
const STEERING_KNOTS = 9;

/**
 * The text of a target file over distance that `readTarget` reads back to the derived level: within 1.5 % of full
 * scale from the peak on, and never over it in the rise, which is a push and, where load was waited for, a squeeze.
 *
 * @param advice of the coach, or null
 */
export function targetFileText(derived: DerivedTarget, advice: string | null): string {
  return (
    header(derived) + yamlLibrary().stringify(targetFileOf(derived, advice), { lineWidth: 100 })
  );
}

/** The same as data. */
export function targetFileOf(derived: DerivedTarget, advice: string | null): DistanceTargetFile {
  const { car, corner, zone, keys } = derived;
  const phases = zonePhases(zone.points, keys);
  return {
    name: `${corner.name}, ${corner.variant}`.slice(0, LONGEST_NAME).trim(),
    corner_type: corner.cornerType,
    ...(advice === null ? {} : { advice }),
    domain: 'distance',
    entry_speed_mps: roundedTo(corner.approachSpeedMps, 3),
    slowest_speed_mps: roundedTo(keys.slowest.speedMps, 3),
    ...levelKeys(phases),
    turn_in_m: roundedTo(zone.slowestM, 2),
    apex_m: roundedTo(keys.apex.distanceM, 2),
    steering: { shape: 'knots', knots: steeringKnots(derived) },
    ...gearKeys(derived),
    full_scale: { pedal_force_n: car.fullScalePedalForceN },
  };
}

type LevelKeys = Pick<
  DistanceTargetFile,
  'brake_point_m' | 'rise' | 'peak_level' | 'hold_m' | 'bleed' | 'release'
>;

function levelKeys({ bleed, squeeze, ...phases }: ZonePhases): LevelKeys {
  return {
    brake_point_m: roundedTo(phases.brakePointM, 3),
    rise: {
      length_m: roundedTo(phases.riseM, 3),
      shape: 'minimum-jerk',
      ...(squeeze === null
        ? {}
        : {
            squeeze: {
              from_share: roundedTo(squeeze.fromShare, 4),
              after_share: roundedTo(squeeze.afterShare, 4),
              e_folds: roundedTo(squeeze.eFolds, 3),
            },
          }),
    },
    peak_level: roundedTo(phases.peakLevel, 5),
    hold_m: roundedTo(Math.max(0, phases.holdM), 3),
    ...(bleed === null
      ? {}
      : {
          bleed: { length_m: roundedTo(bleed.lengthM, 3), to_level: roundedTo(bleed.toLevel, 5) },
        }),
    release: {
      shape: 'knots',
      brake_off_m: roundedTo(phases.brakeOffM, 3),
      knots: phases.knots.map(({ distanceM, level }) => ({
        distance_m: roundedTo(distanceM, 3),
        level: roundedTo(level, 5),
      })),
    },
  };
}

function steeringKnots({ zone, keys }: DerivedTarget): { distance_m: number; angle_deg: number }[] {
  const turning = zone.points.filter(({ sM }) => sM >= keys.turnIn.sM);
  const count = Math.min(STEERING_KNOTS, turning.length);
  const { distanceM: fromM } = keys.turnIn;
  return Array.from({ length: count }, (_, i) => {
    const wantedM = fromM * (1 - i / (count - 1));
    const point = turning.reduce((best, p) =>
      Math.abs(p.distanceM - wantedM) < Math.abs(best.distanceM - wantedM) ? p : best,
    );
    return {
      distance_m: roundedTo(point.distanceM, 3),
      angle_deg: roundedTo(degreesFromRadians(point.steeringRad), 2),
    };
  }).filter((knot, i, knots) => i === 0 || knot.distance_m < (knots[i - 1]?.distance_m ?? 0));
}

/** Of shifts at one place only the last is a gear of its own. */
function gearKeys({ zone }: DerivedTarget): Pick<DistanceTargetFile, 'gears'> {
  const gears = zone.downshifts.map(({ atM, toGear }) => ({
    distance_m: roundedTo(zone.slowestM - atM, 2),
    gear: toGear,
  }));
  const apart = gears.filter(({ distance_m }, i) => distance_m > (gears[i + 1]?.distance_m ?? -1));
  return apart.length === 0 ? {} : { gears: apart };
}

function header({ car, corner, zone }: DerivedTarget): string {
  return `# yaml-language-server: $schema=../schema/target.schema.json
#
${derivedForText({ car: car.id, corner: corner.id, variant: corner.variant })}${zone.model} model.
# A starting point, to be approached from the safe side.
`;
}
