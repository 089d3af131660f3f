import type { ProfileChange } from '../../profile/edit/profile-change.ts';
import type { TargetFile } from '../target-file.ts';

/**
 * Where the phases of a file meet, on its own axis: seconds after the start of the rise, or metres to the slowest point.
 * A file states lengths; who draws moves the places.
 */
export interface CurveStations {
  /** Start of the rise; 0 over time. */
  readonly start: number;
  readonly peak: number;
  readonly holdEnd: number;
  /** Null without a bleed. */
  readonly bleedEnd: number | null;
  readonly brakeOff: number;
}

/** +1 where the axis runs as the driver does, -1 where it counts down. */
export function aheadOf({ domain }: TargetFile): 1 | -1 {
  return domain === 'time' ? 1 : -1;
}

/** Decimals with which places are written: 0.1 ms and 1 mm. */
export function placeDecimals({ domain }: TargetFile): number {
  return domain === 'time' ? 4 : 3;
}

export function stationsOf(file: TargetFile): CurveStations {
  const ahead = aheadOf(file);
  const start = file.domain === 'time' ? 0 : file.brake_point_m;
  const peak = start + ahead * riseOf(file);
  const holdEnd = peak + ahead * holdOf(file);
  const bleed = bleedOf(file);
  const bleedEnd = bleed === null ? null : holdEnd + ahead * bleed;
  const brakeOff =
    file.domain === 'time'
      ? (bleedEnd ?? holdEnd) + file.release.duration_s
      : (file.release.brake_off_m ?? 0);
  return { start, peak, holdEnd, bleedEnd, brakeOff };
}

/** Start of release. */
export function releaseStart({ holdEnd, bleedEnd }: CurveStations): number {
  return bleedEnd ?? holdEnd;
}

/** The changes that move the phases of a file to these places. A bleed is neither added nor taken away. */
export function stationChanges(file: TargetFile, to: CurveStations): ProfileChange[] {
  const length = (from: number, until: number): number => aheadOf(file) * (until - from);
  const unit = file.domain === 'time' ? 's' : 'm';
  const lengthKey = file.domain === 'time' ? 'duration_s' : 'length_m';
  const changes = [
    set(file, ['rise', lengthKey], riseOf(file), length(to.start, to.peak)),
    holdChange(file, unit, length(to.peak, to.holdEnd)),
    to.bleedEnd === null
      ? null
      : set(file, ['bleed', lengthKey], bleedOf(file), length(to.holdEnd, to.bleedEnd)),
    file.domain === 'time'
      ? set(
          file,
          ['release', 'duration_s'],
          file.release.duration_s,
          length(releaseStart(to), to.brakeOff),
        )
      : brakeOffChange(file, to.brakeOff),
    file.domain === 'time' ? null : set(file, ['brake_point_m'], file.brake_point_m, to.start),
  ];
  return changes.filter((change) => change !== null);
}

function riseOf({ rise }: TargetFile): number {
  return 'duration_s' in rise ? rise.duration_s : rise.length_m;
}

function holdOf(file: TargetFile): number {
  return (file.domain === 'time' ? file.hold_s : file.hold_m) ?? 0;
}

function bleedOf({ bleed }: TargetFile): number | null {
  if (bleed === undefined) return null;
  return 'duration_s' in bleed ? bleed.duration_s : bleed.length_m;
}

function holdChange(file: TargetFile, unit: 's' | 'm', wanted: number): ProfileChange | null {
  const key = `hold_${unit}`;
  if (key in file) return set(file, [key], holdOf(file), wanted);
  const value = rounded(file, wanted);
  if (value === 0) return null;
  return { kind: 'add-key', path: [], key, value, after: 'peak_level' };
}

function brakeOffChange(file: TargetFile, wanted: number): ProfileChange | null {
  const path = ['release', 'brake_off_m'];
  if ('brake_off_m' in file.release) return set(file, path, file.release.brake_off_m ?? 0, wanted);
  const value = rounded(file, wanted);
  if (value === 0) return null;
  return { kind: 'add-key', path: ['release'], key: 'brake_off_m', value, after: 'shape' };
}

function set(
  file: TargetFile,
  path: readonly string[],
  now: number | null,
  wanted: number,
): ProfileChange | null {
  const value = rounded(file, wanted);
  return now !== null && Math.abs(value - now) < 10 ** -placeDecimals(file) / 2
    ? null
    : { kind: 'set', path, value };
}

function rounded(file: TargetFile, value: number): number {
  return Number(value.toFixed(placeDecimals(file))) + 0;
}
