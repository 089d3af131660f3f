import type { TargetFile } from '../target-file.ts';
import { type CurvePoint, curvePoints, releaseSpan } from './curve-point.ts';
import { placeDecimals, stationChanges, stationsOf } from './curve-stations.ts';
import { changed, type EditOutcome, refused } from './edit-outcome.ts';
import { formed } from './release-form.ts';
import { fileKnot, levelOfFile } from './release-knots.ts';

const MOST_KNOTS = 50;

/**
 * A new knot on the curve, halfway from the chosen point to the next. A release of another shape is turned into one
 * through knots first, which is all that happens then.
 */
export function addKnot(file: TargetFile, chosen: CurvePoint): EditOutcome {
  const { release } = file;
  if (release.shape !== 'knots') return formed(file, 'knots');
  if (release.knots.length >= MOST_KNOTS)
    return refused(`A release has at most ${MOST_KNOTS} knots.`);
  const places = placesOfRelease(file);
  const gap = Math.min(gapBehind(file, chosen), places.length - 2);
  const [from, to] = [places[gap]!, places[gap + 1]!];
  if (Math.abs(to - from) < 4 * 10 ** -placeDecimals(file))
    return refused('There is no room for another knot here.');
  const middle = (from + to) / 2;
  const value = fileKnot(file, middle, levelOfFile(file)(middle));
  return changed([{ kind: 'add-item', path: ['release', 'knots'], index: gap, value }], {
    select: `knot-${gap}`,
    done: 'A knot was added.',
  });
}

/** Start of release, knots, brake off. */
function placesOfRelease(file: TargetFile): readonly number[] {
  const { from, to } = releaseSpan(file);
  const knots = curvePoints(file).filter(({ id }) => id.startsWith('knot-'));
  return [from, ...knots.map(({ at }) => at!), to];
}

/** Which gap between the places of the release lies behind a point: the first one for all before it. */
function gapBehind(file: TargetFile, { id }: CurvePoint): number {
  if (id.startsWith('knot-')) return Number(id.slice('knot-'.length)) + 1;
  const ids = curvePoints(file).map((point) => point.id);
  return ids.indexOf(id) >= ids.indexOf('brake-off') ? Number.POSITIVE_INFINITY : 0;
}

/** Takes the chosen knot out, or the bleed where its end is chosen. */
export function removePoint(file: TargetFile, { id, name }: CurvePoint): EditOutcome {
  if (id === 'bleed-end') return removeBleed(file);
  if (id === 'corner') return refused('The corner belongs to its shape: f takes another shape.');
  if (!id.startsWith('knot-') || file.release.shape !== 'knots')
    return refused(`Only knots and a bleed can be taken out, not this: ${name}.`);
  const count = file.release.knots.length;
  if (count < 2) return refused('The last knot stays: f takes another shape.');
  const index = Number(id.slice('knot-'.length));
  return changed([{ kind: 'remove', path: ['release', 'knots', index] }], {
    select: `knot-${Math.min(index, count - 2)}`,
    done: 'The knot was taken out.',
  });
}

/** The start of release goes back to the end of the plateau; brake off stays. */
function removeBleed(file: TargetFile): EditOutcome {
  const { bleed: _, ...without } = file;
  const stations = { ...stationsOf(file), bleedEnd: null };
  const changes = stationChanges(without as TargetFile, stations);
  return changed([{ kind: 'remove', path: ['bleed'] }, ...changes], {
    select: 'hold-end',
    done: 'The bleed was taken out.',
  });
}

/** Share of the way from the end of the plateau to the next point that a new bleed takes. */
const BLEED_SHARE = 0.3;

/** A straight-line bleed behind the plateau, down to where the curve was there. */
export function addBleed(file: TargetFile): EditOutcome {
  if (file.bleed !== undefined) return refused('There is a bleed: choose its end and move it.');
  const stations = stationsOf(file);
  const [, next] = placesUntilNext(file);
  const end = stations.holdEnd + BLEED_SHARE * (next - stations.holdEnd);
  const { level } = fileKnot(file, end, levelOfFile(file)(end));
  const length = Number(Math.abs(end - stations.holdEnd).toFixed(placeDecimals(file)));
  const lengthKey = file.domain === 'time' ? 'duration_s' : 'length_m';
  const holdKey = file.domain === 'time' ? 'hold_s' : 'hold_m';
  const value = { [lengthKey]: length, to_level: level };
  const withBleed = { ...file, bleed: value } as unknown as TargetFile;
  const bleedEnd = stations.holdEnd + (file.domain === 'time' ? length : -length);
  return changed(
    [
      {
        kind: 'add-key',
        path: [],
        key: 'bleed',
        value,
        after: holdKey in file ? holdKey : 'peak_level',
      },
      ...stationChanges(withBleed, { ...stations, bleedEnd }),
    ],
    { select: 'bleed-end', done: 'A bleed was added.' },
  );
}

/** Start of release and what comes behind it: the first knot, the corner or brake off. */
function placesUntilNext(file: TargetFile): readonly [number, number] {
  const { from, to } = releaseSpan(file);
  const inner = curvePoints(file).find(({ id }) => id === 'corner' || id === 'knot-0');
  return [from, inner?.at ?? to];
}
