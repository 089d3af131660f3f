import { joinPath, type SegmentKind } from '../path.ts';
import { minimise } from './minimise.ts';
import { type RoughLine, roughLine } from './rough-line.ts';
import type { TurningSignal } from './turning-signal.ts';

/** How the entry was driven; constant is an arc from turn-in on, without a transition. */
const ENTRY_KINDS = ['smooth-apex', 'clothoid', 'constant'] as const;
type EntryKind = (typeof ENTRY_KINDS)[number];

/** One bend fitted to a turning signal; places as the signal's. */
export interface FittedLine {
  readonly entry: EntryKind;
  readonly turnInM: number;
  readonly entryM: number;
  /** At the smallest radius, 1/m, positive to the left; a steering shape is in its own unit. */
  readonly curvature: number;
  /** Null where the log ends before the car straightens: the arc goes on to the end then. */
  readonly exit: { readonly arcM: number; readonly exitM: number } | null;
  /** Root mean square of what is left over, as a share of the signal at the tightest place. */
  readonly missShare: number;
  /** The same for each kind of entry. */
  readonly missShares: Readonly<Record<'smooth-apex' | 'clothoid', number>>;
  readonly turnsBack: boolean;
}

interface LineFitWish {
  readonly slowestM: number;
  /** An entry no longer than this is none: the line is constant. */
  readonly shortestM: number;
}

/**
 * The bend whose curvature, times the signal's gain and plus a constant offset of the sensor, comes closest to the
 * signal by least squares. Its transitions are a raised cosine (smooth-apex) or linear in distance (clothoid), whichever
 * leaves less over; with one so short that no wheel turns as fast it is constant.
 *
 * @param placeM ascending, one for each value
 * @returns null where the signal does not turn
 */
export function fitLine(
  signal: Pick<TurningSignal, 'values' | 'gain'>,
  placeM: Float64Array,
  { slowestM, shortestM }: LineFitWish,
): FittedLine | null {
  const rough = roughLine(signal, placeM, slowestM);
  if (rough === null) return null;
  const inside = (_: number, i: number): boolean =>
    placeM[i]! >= rough.fromM && placeM[i]! <= rough.toM;
  const bend = { values: signal.values.filter(inside), gain: signal.gain.filter(inside) };
  const places = placeM.filter(inside);
  const smooth = fitKind('smooth', rough, bend, places);
  const clothoid = fitKind('clothoid', rough, bend, places);
  const isSmooth = smooth.missShare <= clothoid.missShare;
  const taken = isSmooth ? smooth : clothoid;
  const transition = isSmooth ? 'smooth-apex' : 'clothoid';
  return {
    ...taken,
    entry: taken.entryM <= shortestM ? 'constant' : transition,
    missShares: { 'smooth-apex': smooth.missShare, clothoid: clothoid.missShare },
    turnsBack: rough.turnsBack,
  };
}

type KindFit = Omit<FittedLine, 'entry' | 'missShares' | 'turnsBack'>;

const SHORTEST_M = 0.2;
/** Between a tenth and nine tenths lies this share of a raised cosine: 1 - 4 asin(sqrt(0.1)) / pi. */
const BETWEEN_SHARE = 0.59;

function fitKind(
  kind: SegmentKind,
  rough: RoughLine,
  signal: Pick<TurningSignal, 'values' | 'gain'>,
  placeM: Float64Array,
): KindFit {
  const entryM = Math.max(SHORTEST_M, (rough.in90M - rough.in10M) / BETWEEN_SHARE);
  const exitM = Math.max(SHORTEST_M, (rough.out10M - rough.out90M) / BETWEEN_SHARE);
  const turnInM = rough.in90M - entryM * ((1 + BETWEEN_SHARE) / 2);
  const arcM = Math.max(SHORTEST_M, rough.out90M - rough.in90M);
  const beyondM = placeM.at(-1)! - turnInM + 1;
  const shapeOf = ([startM, lnEntry, lnArc, lnExit]: readonly number[]) => {
    const lengths = [Math.exp(lnEntry!), Math.exp(lnArc ?? Math.log(beyondM))] as const;
    return { startM: startM!, lengths, exitM: lnExit === undefined ? null : Math.exp(lnExit) };
  };
  const evaluate = (at: readonly number[]): Scaled => {
    const { startM, lengths, exitM: out } = shapeOf(at);
    const shape = unitBend(kind, lengths[0], lengths[1], out);
    return scaled(signal, (i) => shape(placeM[i]! - startM));
  };
  const start = [turnInM, Math.log(entryM)];
  if (rough.hasExit) start.push(Math.log(arcM), Math.log(exitM));
  const steps = [0.2 * entryM, 0.3, 0.3, 0.3].slice(0, start.length);
  const first = minimise((at) => evaluate(at).squares, start, steps);
  // once more from there: a simplex may have gone flat
  const { at } = minimise((place) => evaluate(place).squares, first.at, steps);
  const { startM, lengths, exitM: out } = shapeOf(at);
  const { curvature, squares } = evaluate(at);
  const top = Math.abs(curvature) * gainAt(signal.gain, placeM, startM + lengths[0]);
  return {
    turnInM: startM,
    entryM: lengths[0],
    curvature,
    exit: out === null ? null : { arcM: lengths[1], exitM: out },
    missShare: Math.sqrt(squares / placeM.length) / top,
  };
}

/** Curvature over its largest value along a bend from its turn-in, 0 outside. */
function unitBend(
  kind: SegmentKind,
  entryM: number,
  arcM: number,
  exitM: number | null,
): (sM: number) => number {
  const transition = {
    kind,
    lengthM: Math.max(SHORTEST_M, entryM),
    startCurvature: 0,
    endCurvature: 1,
  };
  const arc = {
    kind: 'constant',
    lengthM: Math.max(1e-3, arcM),
    startCurvature: 1,
    endCurvature: 1,
  } as const;
  const out = {
    kind,
    lengthM: Math.max(SHORTEST_M, exitM ?? 1),
    startCurvature: 1,
    endCurvature: 0,
  };
  return joinPath(exitM === null ? [transition, arc] : [transition, arc, out]).curvatureAt;
}

interface Scaled {
  readonly curvature: number;
  readonly squares: number;
}

/** The size of a shape and the sensor's offset that fit best, and the squares left over. */
function scaled(
  { values, gain }: Pick<TurningSignal, 'values' | 'gain'>,
  shape: (i: number) => number,
): Scaled {
  let [n, x, y, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < values.length; i++) {
    const a = shape(i) * gain[i]!;
    const b = values[i]!;
    n++;
    x += a;
    y += b;
    xx += a * a;
    xy += a * b;
    yy += b * b;
  }
  const [spread, both, all] = [xx - (x * x) / n, xy - (x * y) / n, yy - (y * y) / n];
  if (!(spread > 0)) return { curvature: 0, squares: all };
  return { curvature: both / spread, squares: Math.max(0, all - both ** 2 / spread) };
}

function gainAt(gain: Float64Array, placeM: Float64Array, atM: number): number {
  const place = placeM.findIndex((sM) => sM >= atM);
  return gain[place < 0 ? gain.length - 1 : place]!;
}
