import { columnOf } from '../trace/column-of.ts';
import { findCause } from './cause.ts';
import type { InPieces } from './in-pieces.ts';
import { RATE_HZ } from './scoring-filter.ts';
import { spectralArcLength } from './smoothness.ts';

const TIMES = 8;
const RAMP = 64;
/** A few points are enough: they are gone through a thousand times. */
const RELEASE = { from: 20, to: 28, mark: 22, peak: 10, rateHz: RATE_HZ };

/** What takes most of the time of a first score, on ramps so short that it takes little. */
export function* rehearsedParts(): InPieces<void> {
  const target = columnOf(RAMP, (i) => 1 - i / RAMP);
  const rep = target.map((level) => 0.9 * level);
  for (let i = 0; i < TIMES; i++) {
    findCause({ ...RELEASE, rep, target });
    yield;
    spectralArcLength(target, RATE_HZ);
    yield;
  }
}
