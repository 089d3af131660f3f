/**
 * How far a trace was from its target so far, as sums over time: it can be extended sample by sample while driving. The final score takes its release error by the same sums over the filtered record, so both
 * agree but for what the filter takes away.
 */
export interface Deviation {
  readonly timeS: number;
  /** Integral of driver minus target. */
  readonly error: number;
  /** Integral of its square. */
  readonly square: number;
}

export const NO_DEVIATION: Deviation = { timeS: 0, error: 0, square: 0 };

/**
 * The deviation after one more stretch of `dtS` seconds in which driver and target were at these levels. Stretches
 * may be of any length, as long as the levels hold over them.
 */
export function addSample(
  deviation: Deviation,
  driverLevel: number,
  targetLevel: number,
  dtS: number,
): Deviation {
  const difference = driverLevel - targetLevel;
  return {
    timeS: deviation.timeS + dtS,
    error: deviation.error + difference * dtS,
    square: deviation.square + difference * difference * dtS,
  };
}

/** Root mean square difference as a level, null before any time has passed. */
export function errorLevel({ timeS, square }: Deviation): number | null {
  return timeS > 0 ? Math.sqrt(square / timeS) : null;
}

/** Mean signed difference as a level, positive is heavy; null before any time has passed. */
export function averageErrorLevel({ timeS, error }: Deviation): number | null {
  return timeS > 0 ? error / timeS : null;
}
