import type { Knot } from '../../curve/monotone-cubic.ts';
import type { RiseSqueeze } from '../rise-squeeze.ts';
import { fitHit } from './fit-hit.ts';
import { fitKnots } from './fit-knots.ts';
import type { ZoneKeyPoints } from './zone-key-points.ts';
import type { ZonePoint } from './zone-point.ts';

/** A zone's level as the phases of a target; places in metres to the slowest point. */
export interface ZonePhases {
  readonly brakePointM: number;
  readonly riseM: number;
  /** Null where one push does. */
  readonly squeeze: RiseSqueeze | null;
  readonly peakLevel: number;
  readonly holdM: number;
  readonly bleed: { readonly lengthM: number; readonly toLevel: number } | null;
  readonly knots: readonly { readonly distanceM: number; readonly level: number }[];
  readonly brakeOffM: number;
}

const MOST_KNOTS = 11;
/** How far a bleed may be from the straight line that the file can say, in levels. */
const STRAIGHT = 0.008;
/** How far that line may be over the bleed, as a share of the peak: beyond it an axle would be over its grip. */
const ABOVE_SHARE = 0.01;
/** How far the knots may be over the release, in levels. */
const KNOTS_ABOVE = 0.0015;
const SHORTEST_BLEED_M = 5;
/** Less than this is a plateau, in levels. */
const LEAST_BLEED = 1e-4;

/** @param points a zone that brakes, in driving order */
export function zonePhases(points: readonly ZonePoint[], keys: ZoneKeyPoints): ZonePhases {
  const { brakePoint, peak, startOfRelease } = keys;
  const { lengthM: riseM, squeeze } = fitHit(points, keys);
  const falling = neverRising(points.slice(points.indexOf(peak)));
  const bleed = bleedOf(falling, startOfRelease);
  const release =
    bleed === null
      ? falling
      : falling
          .filter(({ distanceM }) => distanceM <= startOfRelease.distanceM)
          .map((place) => ({ ...place, level: Math.min(place.level, bleed.toLevel) }));
  const off = release.findIndex(({ level }) => level <= 0);
  const braked = off === -1 ? release : release.slice(0, off + 1);
  const end = braked[braked.length - 1] as Place;
  const knots = fitKnots(
    [...braked.slice(0, -1), { ...end, level: 0 }].map(
      ({ distanceM, level }): Knot => ({ x: -distanceM, y: level }),
    ),
    MOST_KNOTS,
    KNOTS_ABOVE,
  );
  return {
    brakePointM: brakePoint.distanceM,
    riseM,
    squeeze,
    peakLevel: peak.level,
    holdM: brakePoint.distanceM - peak.distanceM - riseM,
    bleed,
    knots: knots.map(({ x, y }) => ({ distanceM: -x, level: y })),
    brakeOffM: end.distanceM,
  };
}

interface Place {
  readonly distanceM: number;
  readonly level: number;
}

/**
 * The never-rising curve that comes closest to the level from its peak on: halfway between the least level so far and
 * the largest one still to come. Where the level would rise again (a gear, a motor that fades, a second apex) it is
 * missed by half of that rise and no more.
 */
function neverRising(points: readonly ZonePoint[]): Place[] {
  const later = points.map(({ level }) => level);
  for (let i = later.length - 2; i >= 0; i--)
    later[i] = Math.max(later[i] as number, later[i + 1] as number);
  let least = Number.POSITIVE_INFINITY;
  return points.map(({ distanceM, level }, i) => {
    least = Math.min(least, level);
    return { distanceM, level: (least + (later[i] ?? level)) / 2 };
  });
}

function bleedOf(falling: readonly Place[], start: ZonePoint): ZonePhases['bleed'] {
  const peak = falling[0] as Place;
  const lengthM = peak.distanceM - start.distanceM;
  const end = falling.find(({ distanceM }) => distanceM <= start.distanceM);
  if (end === undefined || lengthM < SHORTEST_BLEED_M || !(end.level < peak.level - LEAST_BLEED))
    return null;
  const along = falling
    .filter(({ distanceM }) => distanceM >= start.distanceM)
    .map(({ distanceM, level }) => ({ share: (peak.distanceM - distanceM) / lengthM, level }));
  const isStraight = along.every(
    ({ share, level }) =>
      Math.abs(peak.level + (end.level - peak.level) * share - level) <= STRAIGHT,
  );
  if (!isStraight) return null;
  const lowered = Math.max(end.level - STRAIGHT, lowestEnd(peak.level, along));
  return { lengthM, toLevel: Math.min(end.level, lowered) };
}

/** Where a line from the peak ends that is over a bleed by no more than it may be. */
function lowestEnd(
  peakLevel: number,
  along: readonly { readonly share: number; readonly level: number }[],
): number {
  const ends = along
    .filter(({ share }) => share > 0)
    .map(({ share, level }) => peakLevel + (level + (ABOVE_SHARE - 1) * peakLevel) / share);
  return Math.min(...ends);
}
