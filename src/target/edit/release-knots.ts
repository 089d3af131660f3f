import { fitKnots } from '../derive/fit-knots.ts';
import { levelAlong } from '../level-phases.ts';
import { specOfFile } from '../spec-of-file.ts';
import type { TargetFile } from '../target-file.ts';
import { releaseSpan } from './curve-point.ts';
import { placeDecimals, stationsOf } from './curve-stations.ts';

/** A knot as files of both domains write it, under the key of its place. */
interface FileKnot {
  readonly [place: string]: number;
  readonly level: number;
}

const SAMPLES = 200;
const MOST_KNOTS = 8;
const LEVEL_DECIMALS = 4;

/** Level 0..1 of the curve that the file draws, at a place on its own axis. */
export function levelOfFile(file: TargetFile): (at: number) => number {
  const along = levelAlong(specOfFile(file, '').phases);
  const { start } = stationsOf(file);
  return (at) => along(Math.abs(at - start));
}

/** A knot on a place, rounded as files write it. */
export function fileKnot(file: TargetFile, at: number, level: number): FileKnot {
  const place = Number(at.toFixed(placeDecimals(file))) + 0;
  const key = file.domain === 'time' ? 'time_s' : 'distance_m';
  return { [key]: place, level: Number(level.toFixed(LEVEL_DECIMALS)) };
}

/** Knots that draw the release of a file to within half a per cent of full scale; one at least. */
export function knotsOfRelease(file: TargetFile): readonly FileKnot[] {
  const { from, to } = releaseSpan(file);
  const levelAt = levelOfFile(file);
  const placeOf = (u: number): number => from + u * (to - from);
  const points = Array.from({ length: SAMPLES + 1 }, (_, i) => {
    const u = i / SAMPLES;
    return { x: u, y: i === SAMPLES ? 0 : levelAt(placeOf(u)) };
  });
  const fitted = fitKnots(points, MOST_KNOTS);
  const knots = fitted.length > 0 ? fitted : [points[SAMPLES / 2]!];
  return knots.map(({ x, y }) => fileKnot(file, placeOf(x), y));
}
