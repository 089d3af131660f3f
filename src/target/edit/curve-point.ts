import type { ProfilePath } from '../../profile/profile-text.ts';
import type { FilePosition, TargetFile } from '../target-file.ts';
import { DEFAULT_CORRIDOR } from '../target-spec.ts';
import { type CurveStations, releaseStart, stationsOf } from './curve-stations.ts';

/** Something of a target that can be chosen and moved. */
export interface CurvePoint {
  /** Stays the same while the point is moved. */
  readonly id: string;
  readonly name: string;
  /** On the file's own axis; null for what has no place. */
  readonly at: number | null;
  /** Level at the point, or the number itself for what is no place on the curve; null where it has none of its own. */
  readonly value: number | null;
  /** What `value` is. */
  readonly kind: 'level' | 'number' | 'share';
  /** The station that moves with it; null for knots and marks. */
  readonly station: keyof CurveStations | null;
  /** Where its place stands in the file; null for stations, whose places are made of lengths. */
  readonly atPath: ProfilePath | null;
  /** Where its value stands, whether the key is there or not; null where it has none. */
  readonly valuePath: ProfilePath | null;
}

type Parts = Partial<CurvePoint> & Pick<CurvePoint, 'id' | 'name'>;

/** All points of a target in the order in which they come along it, and then what has no place. */
export function curvePoints(file: TargetFile): readonly CurvePoint[] {
  const stations = stationsOf(file);
  return [
    ...(file.domain === 'distance'
      ? [station('start', 'brake point', stations.start, { station: 'start' })]
      : []),
    station('peak', 'peak', stations.peak, { station: 'peak', ...peakLevel(file) }),
    ...plateauPoints(file, stations),
    ...releasePoints(file),
    station('brake-off', 'brake off', stations.brakeOff, { station: 'brakeOff' }),
    ...marks(file),
    ...releaseNumber(file),
    corridor('share', 'corridor, share', file.corridor?.share ?? DEFAULT_CORRIDOR.share),
    corridor(
      'floor_level',
      'corridor, at least',
      file.corridor?.floor_level ?? DEFAULT_CORRIDOR.floorLevel,
    ),
  ];
}

function pointOf(parts: Parts): CurvePoint {
  return {
    at: null,
    value: null,
    kind: 'level',
    station: null,
    atPath: null,
    valuePath: null,
    ...parts,
  };
}

function station(id: string, name: string, at: number, parts: Partial<CurvePoint>): CurvePoint {
  return pointOf({ id, name, at, ...parts });
}

function peakLevel({ peak_level }: TargetFile): Partial<CurvePoint> {
  return { value: peak_level, valuePath: ['peak_level'] };
}

function plateauPoints(file: TargetFile, { holdEnd, bleedEnd }: CurveStations): CurvePoint[] {
  const parts: Partial<CurvePoint> = { station: 'holdEnd', ...peakLevel(file) };
  if (file.bleed === undefined || bleedEnd === null)
    return [station('hold-end', 'start of release', holdEnd, parts)];
  return [
    station('hold-end', 'end of the plateau', holdEnd, parts),
    station('bleed-end', 'start of release', bleedEnd, {
      station: 'bleedEnd',
      value: file.bleed.to_level,
      valuePath: ['bleed', 'to_level'],
    }),
  ];
}

function releasePoints({ release }: TargetFile): CurvePoint[] {
  if (release.shape === 'two-stage')
    return [knot('corner', 'corner', release.corner, ['release', 'corner'])];
  if (release.shape !== 'knots') return [];
  const { knots } = release;
  return knots.map((each, i) =>
    knot(`knot-${i}`, `knot ${i + 1} of ${knots.length}`, each, ['release', 'knots', i]),
  );
}

function knot(
  id: string,
  name: string,
  place: FilePosition & { readonly level: number },
  path: ProfilePath,
): CurvePoint {
  const key = 'time_s' in place ? 'time_s' : 'distance_m';
  return pointOf({
    id,
    name,
    at: 'time_s' in place ? place.time_s : place.distance_m,
    value: place.level,
    atPath: [...path, key],
    valuePath: [...path, 'level'],
  });
}

function marks(file: TargetFile): CurvePoint[] {
  const timed = file.domain === 'time';
  const [turnIn, apex] = timed ? [file.turn_in_s, file.apex_s] : [file.turn_in_m, file.apex_m];
  const unit = timed ? 's' : 'm';
  const mark = (id: string, name: string, at: number | undefined): CurvePoint[] =>
    at === undefined
      ? []
      : [pointOf({ id, name, at, atPath: [`${id.replace('-', '_')}_${unit}`] })];
  return [...mark('turn-in', 'turn-in', turnIn), ...mark('apex', 'apex', apex)];
}

function releaseNumber({ release }: TargetFile): CurvePoint[] {
  const number = (key: string, name: string, value: number): CurvePoint =>
    pointOf({ id: key, name, value, kind: 'number', valuePath: ['release', key] });
  if (release.shape === 'power-law')
    return [number('exponent', 'exponent of the release', release.exponent)];
  if (release.shape === 'exponential')
    return [number('e_folds', 'e-folds of the release', release.e_folds)];
  return [];
}

function corridor(key: 'share' | 'floor_level', name: string, value: number): CurvePoint {
  const kind = key === 'share' ? 'share' : 'level';
  return pointOf({ id: `corridor-${key}`, name, value, kind, valuePath: ['corridor', key] });
}

/** Where the release can have knots, from its start to brake off. */
export function releaseSpan(file: TargetFile): { readonly from: number; readonly to: number } {
  const stations = stationsOf(file);
  return { from: releaseStart(stations), to: stations.brakeOff };
}
