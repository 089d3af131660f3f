import type { Knot } from '../curve/monotone-cubic.ts';
import {
  barFromPascals,
  metresPerSecondFromKmh,
  metresPerSecondFromMph,
  newtonsFromKgf,
  newtonsFromLbf,
  pascalsFromPsi,
} from '../units.ts';
import type { ReleaseShape } from './release-shape.ts';
import type { FullScale, TargetSpeeds } from './target.ts';
import type {
  CorridorFile,
  DistanceTargetFile,
  FilePosition,
  FullScaleFile,
  LearnedFromFile,
  ReleaseShapeFile,
  RiseShapeFile,
  SteeringFile,
  TargetFile,
} from './target-file.ts';
import {
  type CorridorSpec,
  DEFAULT_CORRIDOR,
  type LevelPhases,
  type SteeringSpec,
  type TargetAxis,
  type TargetSpec,
} from './target-spec.ts';

/** The specification that a file states, in SI; nothing is checked here. */
export function specOfFile(file: TargetFile, id: string): TargetSpec {
  return {
    id,
    name: file.name,
    cornerType: file.corner_type,
    advice: file.advice?.trim().replace(/\s+/g, ' ') ?? null,
    axis: axisOf(file),
    phases: phasesOf(file),
    ...positionsOf(file),
    steering: steeringOf(file.steering),
    gears: (file.gears ?? []).map((event) => ({ at: positionOf(event), gear: event.gear })),
    corridor: corridorOf(file.corridor ?? {}),
    fullScale: fullScaleOf(file.full_scale ?? {}),
    learnedFrom: file.learned_from === undefined ? null : learnedWords(file.learned_from),
  };
}

function learnedWords({ source, name, learned_on, zones, reps }: LearnedFromFile): string {
  const used = zones ?? reps ?? [];
  return `${used.length} ${source === 'trace' ? 'zones' : 'reps'} of ${name}, ${learned_on}`;
}

function corridorOf({ floor_level, share, knots }: CorridorFile<FilePosition>): CorridorSpec {
  const { floorLevel, share: usualShare } = DEFAULT_CORRIDOR;
  const widened = knots?.map((knot) => ({ x: positionOf(knot), y: knot.half_width_level }));
  return {
    floorLevel: floor_level ?? floorLevel,
    share: share ?? usualShare,
    ...(widened === undefined ? {} : { knots: widened.toSorted((a, b) => a.x - b.x) }),
  };
}

function axisOf(file: TargetFile): TargetAxis {
  if (file.domain === 'time') return { domain: 'time' };
  return { domain: 'distance', brakePointM: file.brake_point_m, speeds: speedsOf(file) };
}

function speedsOf(file: DistanceTargetFile): TargetSpeeds {
  return {
    entryMps: speedMps(file.entry_speed_kmh, file.entry_speed_mph, file.entry_speed_mps),
    slowestMps: speedMps(file.slowest_speed_kmh, file.slowest_speed_mph, file.slowest_speed_mps),
  };
}

/** The schema lets exactly one of the three through. */
function speedMps(kmh?: number, mph?: number, mps?: number): number {
  if (kmh !== undefined) return metresPerSecondFromKmh(kmh);
  return mph === undefined ? mps! : metresPerSecondFromMph(mph);
}

function phasesOf(file: TargetFile): LevelPhases {
  const timed = file.domain === 'time';
  const rise = timed ? file.rise.duration_s : file.rise.length_m;
  const hold = (timed ? file.hold_s : file.hold_m) ?? 0;
  const bleed = bleedOf(file);
  const start = rise + hold + (bleed?.length ?? 0);
  const length = timed
    ? file.release.duration_s
    : file.brake_point_m - start - (file.release.brake_off_m ?? 0);
  const place = (position: FilePosition): number => {
    const run = timed ? positionOf(position) : file.brake_point_m - positionOf(position);
    return (run - start) / length;
  };
  const plateau = bleed?.toLevel ?? file.peak_level;
  return {
    rise: { length: rise, ...riseShapeOf(file.rise) },
    peakLevel: file.peak_level,
    hold,
    bleed,
    release: { length, shape: releaseShapeOf(file.release, place, plateau) },
  };
}

function riseShapeOf({
  shape = 'minimum-jerk',
  squeeze,
}: RiseShapeFile): Omit<LevelPhases['rise'], 'length'> {
  if (squeeze === undefined) return { shape };
  const { from_share: fromShare, after_share: afterShare, e_folds: eFolds } = squeeze;
  return { shape, squeeze: { fromShare, afterShare, eFolds } };
}

function bleedOf(file: TargetFile): LevelPhases['bleed'] {
  if (file.bleed === undefined) return null;
  const length = 'duration_s' in file.bleed ? file.bleed.duration_s : file.bleed.length_m;
  return { length, toLevel: file.bleed.to_level };
}

function releaseShapeOf(
  release: ReleaseShapeFile<FilePosition>,
  place: (position: FilePosition) => number,
  plateau: number,
): ReleaseShape {
  const knot = (point: FilePosition & { readonly level: number }): Knot => ({
    x: place(point),
    y: point.level / plateau,
  });
  switch (release.shape) {
    case 'power-law':
      return { kind: 'power-law', exponent: release.exponent };
    case 'exponential':
      return { kind: 'exponential', eFolds: release.e_folds };
    case 'two-stage':
      return { kind: 'two-stage', corner: knot(release.corner) };
    case 'knots':
      return { kind: 'knots', knots: release.knots.map(knot) };
    default:
      return { kind: release.shape };
  }
}

function positionsOf(file: TargetFile): Pick<TargetSpec, 'turnIn' | 'apex'> {
  return file.domain === 'time'
    ? { turnIn: file.turn_in_s ?? null, apex: file.apex_s ?? null }
    : { turnIn: file.turn_in_m ?? null, apex: file.apex_m ?? null };
}

function positionOf(position: FilePosition): number {
  return 'time_s' in position ? position.time_s : position.distance_m;
}

function steeringOf(steering: SteeringFile<FilePosition> | undefined): SteeringSpec | null {
  if (steering === undefined) return null;
  if (steering.shape !== 'knots')
    return { kind: 'turn', shape: steering.shape, angleDeg: steering.angle_deg };
  const knots = steering.knots.map((knot) => ({ x: positionOf(knot), y: knot.angle_deg }));
  return { kind: 'knots', knots: knots.sort((a, b) => a.x - b.x) };
}

function fullScaleOf(file: FullScaleFile): FullScale {
  const { pedal_force_kgf: kgf, pedal_force_lbf: lbf, pressure_psi: psi } = file;
  const force =
    file.pedal_force_n ??
    (kgf === undefined ? undefined : newtonsFromKgf(kgf)) ??
    (lbf === undefined ? undefined : newtonsFromLbf(lbf));
  const pressure =
    file.pressure_bar ?? (psi === undefined ? undefined : barFromPascals(pascalsFromPsi(psi)));
  return { pedalForceN: force ?? null, pressureBar: pressure ?? null };
}
