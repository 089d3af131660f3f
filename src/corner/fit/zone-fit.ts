/** How a number was come by. */
export type Basis = 'measured' | 'estimated' | 'assumed';

/** A number of one zone, with where it comes from in a few words. */
export interface Found {
  readonly value: number;
  readonly basis: Basis;
  readonly rule: string;
}

export const measured = (value: number, rule: string): Found => ({
  value,
  basis: 'measured',
  rule,
});
export const estimated = (value: number, rule: string): Found => ({
  value,
  basis: 'estimated',
  rule,
});
export const assumed = (value: number, rule: string): Found => ({ value, basis: 'assumed', rule });

export const FIGURES = [
  'approachSpeedMps',
  'brakePointM',
  'turnInM',
  'slowestSpeedMps',
  'radiusM',
  'entryM',
  'exitM',
  'turnRad',
  'endSpeedMps',
  'approachGear',
  'slowestGear',
  'lastDownshiftM',
  'brakingGripShare',
  'turningGripShare',
] as const;

/**
 * The numbers of a corner. Places are metres: the brake point, turn-in and the last downshift before the slowest point
 * (a negative one lies after it), the entry from turn-in to the smallest radius.
 */
export type Figure = (typeof FIGURES)[number];

/** A figure that nothing can be said of is not there. */
export type Figures = Readonly<Partial<Record<Figure, Found>>>;

/** What one zone says about its corner. */
export interface ZoneFit {
  readonly number: number;
  readonly figures: Figures;
  readonly entry: EntryFound;
  /** Positive to the left; null where no signal says. */
  readonly direction: 'left' | 'right' | null;
  /** Downshifts before the slowest point, in driving order, m. */
  readonly shiftsM: readonly number[];
  readonly cautions: readonly string[];
}

export interface EntryFound {
  readonly kind: 'smooth-apex' | 'clothoid' | 'constant';
  readonly basis: Basis;
  readonly rule: string;
}
