import type { ProfileChange } from '../../profile/edit/profile-change.ts';
import type { TargetFile } from '../target-file.ts';
import { type CurvePoint, curvePoints } from './curve-point.ts';
import {
  aheadOf,
  type CurveStations,
  placeDecimals,
  stationChanges,
  stationsOf,
} from './curve-stations.ts';
import { changed, type EditOutcome, refused } from './edit-outcome.ts';

/** The point alone, or it and all of the curve behind it. Turn-in and apex belong to the road and stay. */
type MoveReach = 'alone' | 'with-rest';

/** The point later (`by` above 0) or earlier along the way, in the unit of the file's axis. */
export function movePoint(
  file: TargetFile,
  point: CurvePoint,
  by: number,
  reach: MoveReach,
): EditOutcome {
  if (point.at === null) return refused(`${capital(point.name)} has no place: use up and down.`);
  const along = aheadOf(file) * by;
  const moved = movedStations(file, point, along, reach);
  const trouble = disorder(file, moved);
  if (trouble !== null) return refused(trouble);
  return changed([...stationChanges(file, moved), ...movedPlaces(file, point, along, reach)]);
}

const ORDER: readonly (keyof CurveStations)[] = [
  'start',
  'peak',
  'holdEnd',
  'bleedEnd',
  'brakeOff',
];

function movedStations(
  file: TargetFile,
  point: CurvePoint,
  along: number,
  reach: MoveReach,
): CurveStations {
  const stations = stationsOf(file);
  if (point.station === null)
    return isKnot(point) && reach === 'with-rest'
      ? { ...stations, brakeOff: stations.brakeOff + along }
      : stations;
  const first = ORDER.indexOf(point.station);
  const move = (key: keyof CurveStations): number | null => {
    const at = stations[key];
    const moves = reach === 'alone' ? key === point.station : ORDER.indexOf(key) >= first;
    return at !== null && moves ? at + along : at;
  };
  return {
    start: move('start')!,
    peak: move('peak')!,
    holdEnd: move('holdEnd')!,
    bleedEnd: move('bleedEnd'),
    brakeOff: move('brakeOff')!,
  };
}

/** Knots and marks, whose places the file states. */
function movedPlaces(
  file: TargetFile,
  point: CurvePoint,
  along: number,
  reach: MoveReach,
): ProfileChange[] {
  const points = curvePoints(file);
  const from = points.findIndex(({ id }) => id === point.id);
  return points.flatMap((each, i): ProfileChange[] => {
    const follows = reach === 'with-rest' && i > from && isKnot(each) && !isMark(point);
    if (each.atPath === null || each.at === null || !(each.id === point.id || follows)) return [];
    const value = Number((each.at + along).toFixed(placeDecimals(file))) + 0;
    return [{ kind: 'set', path: each.atPath, value }];
  });
}

function isKnot({ id }: CurvePoint): boolean {
  return id === 'corner' || id.startsWith('knot-');
}

function isMark({ id }: CurvePoint): boolean {
  return id === 'turn-in' || id === 'apex';
}

/** Names the two points that would change places; null where all stay in order. */
function disorder(file: TargetFile, to: CurveStations): string | null {
  const places = ORDER.flatMap((key) => {
    const at = to[key];
    return at === null ? [] : [{ key, at: aheadOf(file) * at }];
  });
  const smallest = 10 ** -placeDecimals(file);
  for (const [i, { key, at }] of places.entries()) {
    const before = places[i - 1];
    if (before === undefined) continue;
    // Only the plateau may be nothing.
    const least = key === 'holdEnd' ? 0 : smallest;
    if (at - before.at < least - smallest / 2)
      return `${capital(stationName(file, key))} has to come after ${stationName(file, before.key)}.`;
  }
  return null;
}

function stationName(file: TargetFile, key: keyof CurveStations): string {
  if (key === 'start') return 'the start of the rise';
  const point = curvePoints(file).find(({ station }) => station === key);
  const name = point?.name ?? key;
  return name.startsWith('brake off') ? name : `the ${name}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
