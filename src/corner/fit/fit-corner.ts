import { median } from '../../consistency/median.ts';
import { Problem } from '../../problem.ts';
import type { NotFitted } from './fit-signals.ts';
import { type Basis, type EntryFound, FIGURES, type Figure, type ZoneFit } from './zone-fit.ts';

/** A figure over all zones that have it. */
export interface Merged {
  /** Median. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Zones it comes from. */
  readonly count: number;
  readonly basis: Basis;
  readonly rule: string;
}

/** A corner as one or several logged zones show it, with what they could not show. */
export interface CornerFit {
  readonly zones: readonly number[];
  readonly leftOut: readonly NotFitted[];
  readonly figures: Readonly<Partial<Record<Figure, Merged>>>;
  readonly entry: EntryFound;
  readonly direction: { readonly side: 'left' | 'right'; readonly basis: Basis };
  /** Medians in driving order, m before the slowest point; empty where zones differ in their number. */
  readonly shiftsM: readonly number[];
  readonly carName: string | null;
  readonly unknown: readonly string[];
  readonly cautions: readonly string[];
}

/** What somebody says who knows the corner; null leaves it to the log. */
interface SaidOfCorner {
  readonly direction: 'left' | 'right' | null;
  readonly turnRad: number | null;
}

/**
 * Puts the zones of one corner together: medians, lowest and highest.
 * @param fits at least one
 * @throws Problem where they turn different ways
 */
export function fitCorner(
  fits: readonly ZoneFit[],
  leftOut: readonly NotFitted[],
  said: SaidOfCorner,
  carName: string | null,
): CornerFit {
  refuseBothWays(fits);
  const figures = mergedFigures(fits, said);
  const direction = directionOf(fits, said);
  return {
    zones: fits.map(({ number }) => number),
    leftOut,
    figures,
    entry: commonEntry(fits),
    direction,
    shiftsM: commonShifts(fits),
    carName,
    unknown: unknowns(figures, direction.basis, carName),
    cautions: cautionsOf(fits, figures),
  };
}

function refuseBothWays(fits: readonly ZoneFit[]): void {
  const turning = (side: 'left' | 'right'): ZoneFit | undefined =>
    fits.find(({ direction }) => direction === side);
  const [left, right] = [turning('left'), turning('right')];
  if (left === undefined || right === undefined) return;
  throw new Problem(
    `zone ${left.number} turns left, zone ${right.number} right: they are not one corner`,
    { where: 'corner fit', next: 'Name zones of one corner: the same place of every lap.' },
  );
}

function mergedFigures(
  fits: readonly ZoneFit[],
  { turnRad }: SaidOfCorner,
): Partial<Record<Figure, Merged>> {
  const merged: Partial<Record<Figure, Merged>> = {};
  for (const figure of FIGURES) {
    const found = fits.flatMap(({ figures }) => figures[figure] ?? []);
    const [first] = found;
    if (first === undefined) continue;
    const values = found.map(({ value }) => value);
    const middle = median(values)!;
    const isGear = figure === 'approachGear' || figure === 'slowestGear';
    merged[figure] = {
      value: isGear ? Math.round(middle) : middle,
      low: Math.min(...values),
      high: Math.max(...values),
      count: values.length,
      basis: first.basis,
      rule: first.rule,
    };
  }
  if (turnRad !== null)
    merged.turnRad = {
      value: turnRad,
      low: turnRad,
      high: turnRad,
      count: fits.length,
      basis: 'assumed',
      rule: 'as it was said with --turn-deg',
    };
  return merged;
}

function commonEntry(fits: readonly ZoneFit[]): EntryFound {
  const votes = (kind: string): number => fits.filter(({ entry }) => entry.kind === kind).length;
  return fits
    .map(({ entry }) => entry)
    .reduce((best, entry) => (votes(entry.kind) > votes(best.kind) ? entry : best));
}

function directionOf(fits: readonly ZoneFit[], said: SaidOfCorner): CornerFit['direction'] {
  if (said.direction !== null) return { side: said.direction, basis: 'assumed' };
  const known = fits.find(({ direction }) => direction !== null)?.direction ?? null;
  return known === null ? { side: 'left', basis: 'assumed' } : { side: known, basis: 'measured' };
}

function commonShifts(fits: readonly ZoneFit[]): number[] {
  const count = fits[0]!.shiftsM.length;
  if (fits.some(({ shiftsM }) => shiftsM.length !== count)) return [];
  return fits[0]!.shiftsM.map((_, i) => median(fits.map(({ shiftsM }) => shiftsM[i]!))!);
}

function unknowns(
  figures: Partial<Record<Figure, Merged>>,
  direction: Basis,
  carName: string | null,
): string[] {
  const { radiusM, turnInM, exitM, approachGear } = figures;
  return [
    'slope, bank and bumps: the sheet is flat and smooth until you add them',
    'road width, kerbs and where else the line could go',
    'grip of that day: tyres, temperature and surface are in the speeds, and not in the sheet',
    'wind: it is in the deceleration',
    'how much straight there is before the brake point: approach_length_m is a guess',
    ...(radiusM?.basis === 'measured'
      ? []
      : ['the radius itself: no yaw rate, lateral acceleration or steering of a known car']),
    ...(turnInM === undefined || turnInM.rule.startsWith('fall of deceleration')
      ? ['turn-in itself: no signal of turning was logged']
      : []),
    ...(exitM === undefined
      ? ['the exit: the log does not show the car going straight again']
      : []),
    ...(direction === 'measured' ? [] : ['left or right: no signal with a sign says it']),
    ...(approachGear?.basis === 'measured' ? [] : ['gears: no gear was logged']),
    ...(carName === null ? ['the share of grip that was used: no --car was named'] : []),
  ];
}

/** Entries and slowest points of one corner lie within these (common practice, no source). */
const SPEED_SHARE = 0.1;
const RADIUS_SHARE = 0.25;

function cautionsOf(fits: readonly ZoneFit[], figures: Partial<Record<Figure, Merged>>): string[] {
  const own = fits.flatMap(({ number, cautions }) =>
    cautions.map((caution) => (fits.length === 1 ? caution : `zone ${number}: ${caution}`)),
  );
  const differs = (figure: Figure, share: number): boolean => {
    const found = figures[figure];
    return found !== undefined && found.high - found.low > share * found.value;
  };
  if (differs('approachSpeedMps', SPEED_SHARE) || differs('slowestSpeedMps', 2 * SPEED_SHARE))
    own.push('speeds differ from zone to zone: make sure that the zones are one corner');
  if (differs('radiusM', RADIUS_SHARE)) own.push('radii differ from zone to zone by a quarter');
  const share = figures.brakingGripShare?.value ?? 0;
  if (share > 1.03)
    own.push(
      `the car braked with ${Math.round(100 * share)} % of what its file allows: a downhill road, or a file with too little grip`,
    );
  return own;
}
