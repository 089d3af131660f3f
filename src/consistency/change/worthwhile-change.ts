/** How large a change between two practices has to be. */
export interface WorthwhileChange {
  /** Below this a change does not matter. */
  readonly smallest: number;
  /** Above this a change between two practices is more than noise, on one side and at 95 %, and matters. */
  readonly clear: number;
  /** 95 of 100 differences between two practices stay below this without any change. */
  readonly detectable: number;
}

/** Of an individual athlete's own variation from contest to contest (Hopkins 2004, Sportscience 8:1). */
const SMALLEST_SHARE = 0.3;
const ONE_SIDED = 1.645;
/** 1.96 times the square root of 2, for differences. */
const DETECTABLE = 2.77;

/** @param typicalError how far a practice strays without any change */
export function worthwhileChange(typicalError: number): WorthwhileChange {
  const smallest = SMALLEST_SHARE * typicalError;
  return {
    smallest,
    clear: smallest + ONE_SIDED * Math.SQRT2 * typicalError,
    detectable: DETECTABLE * typicalError,
  };
}
