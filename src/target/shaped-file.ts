import { stringify } from 'yaml';
import type { ReleaseShape } from './release-shape.ts';
import { riseShare } from './rise-shape.ts';

/** A point as a person says it: a place on the axis and a level. */
export interface ShapedKnot {
  readonly at: number;
  readonly level: number;
}

/** What a person says of a target that is made of a shape; lengths and places are on its own axis, s or m. */
export interface ShapeWish {
  readonly name: string;
  readonly cornerType: string;
  readonly advice: string | null;
  /** Null over time. */
  readonly distance: {
    readonly brakePointM: number;
    readonly brakeOffM: number;
    readonly entryKmh: number;
    readonly slowestKmh: number;
  } | null;
  readonly peakLevel: number;
  /** From 10 to 90 % of the peak, as a hit is measured. */
  readonly hit: number;
  readonly hold: number;
  readonly bleed: { readonly length: number; readonly toLevel: number } | null;
  /** Start of release to brake off; null over distance, where the places say it. */
  readonly release: number | null;
  readonly shape: ReleaseShape['kind'];
  readonly exponent: number | null;
  readonly eFolds: number | null;
  /** Of a two-stage release its corner, of one through knots all of them. */
  readonly knots: readonly ShapedKnot[];
  readonly turnIn: number | null;
  readonly apex: number | null;
  /** At the apex, left positive. */
  readonly steeringDeg: number | null;
}

const HEADER = `# yaml-language-server: $schema=../schema/target.schema.json
#
# Made of a shape. A starting point, to be approached from the safe side.
`;

/** The text of a target file that says the wish; `readTarget` says what is wrong with it. */
export function shapedFileText(wish: ShapeWish): string {
  return HEADER + stringify(shapedFile(wish), { lineWidth: 100 });
}

function shapedFile(wish: ShapeWish): Record<string, unknown> {
  const { distance, bleed } = wish;
  const unit = distance === null ? 's' : 'm';
  const length = distance === null ? 'duration_s' : 'length_m';
  return {
    name: wish.name,
    corner_type: wish.cornerType,
    ...given('advice', wish.advice),
    domain: distance === null ? 'time' : 'distance',
    ...(distance === null
      ? {}
      : {
          entry_speed_kmh: distance.entryKmh,
          slowest_speed_kmh: distance.slowestKmh,
          brake_point_m: distance.brakePointM,
        }),
    rise: { [length]: wholeRise(wish.hit) },
    peak_level: wish.peakLevel,
    [`hold_${unit}`]: wish.hold,
    ...(bleed === null ? {} : { bleed: { [length]: bleed.length, to_level: bleed.toLevel } }),
    release: releaseOf(wish),
    ...given(`turn_in_${unit}`, wish.turnIn),
    ...given(`apex_${unit}`, wish.apex),
    ...(wish.steeringDeg === null
      ? {}
      : { steering: { shape: 'raised-cosine', angle_deg: wish.steeringDeg } }),
  };
}

/** From nothing to the peak: the rise is a minimum-jerk push, and the same from below as from above. */
function wholeRise(hit: number): number {
  const share = riseShare('minimum-jerk');
  let [low, high] = [0, 0.5];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (share(middle) < 0.1) low = middle;
    else high = middle;
  }
  return Number((hit / (1 - 2 * high)).toFixed(4));
}

function releaseOf(wish: ShapeWish): Record<string, unknown> {
  const { distance, shape, knots } = wish;
  const place = distance === null ? 'time_s' : 'distance_m';
  const points = knots.map(({ at, level }) => ({ [place]: at, level }));
  return {
    ...(distance === null
      ? given('duration_s', wish.release)
      : { brake_off_m: distance.brakeOffM }),
    shape,
    ...given('exponent', wish.exponent),
    ...given('e_folds', wish.eFolds),
    ...(points.length === 0
      ? {}
      : shape === 'two-stage'
        ? { corner: points[0] }
        : { knots: points }),
  };
}

function given(key: string, value: number | string | null): Record<string, unknown> {
  return value === null ? {} : { [key]: value };
}
