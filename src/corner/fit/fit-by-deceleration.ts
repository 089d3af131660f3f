import { type FitSignals, placeAt, SMOOTH_S } from './fit-signals.ts';
import { localQuadratic } from './local-quadratic.ts';
import { minimise } from './minimise.ts';

/** What the fall of deceleration towards the slowest point says. */
export interface DecelerationFit {
  /** Turn-in to slowest point. */
  readonly entryM: number;
  readonly entry: 'smooth-apex' | 'clothoid';
  /** What the car would slow with on the straight: at rest, and more with speed squared, m/s^2 and 1/m. */
  readonly alongMps2: number;
  readonly perSpeedSquared: number;
  /** Root mean square of what is left over, m/s^2. */
  readonly missMps2: number;
}

/** After the onset the brake is still being applied; common practice, no source. */
const APPLIED_S = 0.4;
const SHORTEST_M = 5;
/** Of the longest entry there could be: a search from one alone may end in a hollow. */
const STARTS = [0.25, 0.5, 0.8];
const FEWEST = 6;

/**
 * The entry whose friction circle gives the measured deceleration: D = (a + b v^2) sqrt(1 - u^2), with the share u of
 * the grip used for turning going from 0 at turn-in to 1 at the slowest point, as the curvature of the entry and the
 * speed make it go; a, b and the length of the entry by least squares.
 *
 * @returns null where the zone is too short to see it
 */
export function fitByDeceleration(signals: FitSignals): DecelerationFit | null {
  const { timeS, speedMps, placeM, onsetS, slowestS, slowestMps } = signals;
  const slowestM = placeAt(timeS, placeM, slowestS);
  const rows = [...timeS.keys()].filter(
    (i) => timeS[i]! >= onsetS + APPLIED_S && timeS[i]! <= slowestS,
  );
  if (rows.length < FEWEST) return null;
  const places: Place[] = rows.map((i) => {
    const { value, slope } = localQuadratic(timeS, speedMps, timeS[i]!, SMOOTH_S);
    return { beforeM: slowestM - placeM[i]!, w: value ** 2, decelerationMps2: -slope };
  });
  const longestM = Math.max(2 * SHORTEST_M, places[0]!.beforeM);
  const tries = (['smooth-apex', 'clothoid'] as const).flatMap((entry) =>
    STARTS.map((share) => fitKind(places, entry, share * longestM, slowestMps ** 2)),
  );
  return tries.reduce((best, one) => (one.missMps2 < best.missMps2 ? one : best));
}

interface Place {
  readonly beforeM: number;
  readonly w: number;
  readonly decelerationMps2: number;
}

/** From one length on: the length and how much the limit grows with speed are searched, its size is linear. */
function fitKind(
  places: readonly Place[],
  entry: DecelerationFit['entry'],
  startM: number,
  slowestW: number,
): DecelerationFit {
  const of = ([lnEntry, growth]: readonly number[]): DecelerationFit =>
    fitEntry(places, { entry, entryM: Math.exp(lnEntry!), growth: Math.abs(growth!) }, slowestW);
  const start = [Math.log(startM), 1 / slowestW / 10];
  const { at } = minimise((place) => of(place).missMps2, start, [0.2, 1 / slowestW / 5]);
  return of(at);
}

interface Shape {
  readonly entry: DecelerationFit['entry'];
  readonly entryM: number;
  /** b / a. */
  readonly growth: number;
}

function fitEntry(
  places: readonly Place[],
  { entry, entryM, growth }: Shape,
  slowestW: number,
): DecelerationFit {
  const shape = places.map(({ beforeM, w }) => {
    const used =
      (blend(entry, 1 - beforeM / entryM) * w * (1 + growth * slowestW)) /
      (slowestW * (1 + growth * w));
    return (1 + growth * w) * Math.sqrt(Math.max(0, 1 - used ** 2));
  });
  const [own, both] = places.reduce(
    ([xx, xy], { decelerationMps2: y }, i) => [xx + shape[i]! ** 2, xy + shape[i]! * y],
    [0, 0],
  );
  const a = own > 0 ? Math.max(1e-3, both / own) : 1e-3;
  const squares = places.reduce(
    (sum, { decelerationMps2: y }, i) => sum + (y - a * shape[i]!) ** 2,
    0,
  );
  const missMps2 = Math.sqrt(squares / places.length);
  return { entry, entryM, alongMps2: a, perSpeedSquared: a * growth, missMps2 };
}

/** Curvature over its largest value at a share of the entry: linear, or a raised cosine. */
function blend(entry: DecelerationFit['entry'], share: number): number {
  const inside = Math.min(1, Math.max(0, share));
  return entry === 'clothoid' ? inside : (1 - Math.cos(Math.PI * inside)) / 2;
}
