import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';
import type { Size } from '../cell-grid.ts';
import { DOTS_ACROSS, DOTS_DOWN } from '../dot-raster.ts';
import type { Dot } from './line-dots.ts';

/** What a g-g diagram has to hold, in g: left positive, forward positive. */
interface GgSpan {
  readonly left: number;
  readonly right: number;
  readonly forward: number;
  readonly braking: number;
}

/** Places of accelerations on the dots of an area: the car points up, so that its left is left. */
export interface GgScale extends GgSpan {
  readonly dotsPerG: number;
  /** Cells that it takes; no more than the area has. */
  readonly size: Size;
  /** @param accelXMps2 forward positive @param accelYMps2 left positive, ISO 8855 */
  dotOf(accelXMps2: number, accelYMps2: number): Dot;
}

/** The span of all these accelerations with a little room around it; the origin is always in it. */
export function ggSpan(
  all: readonly { readonly x: Float64Array; readonly y: Float64Array }[],
): GgSpan {
  let [left, right, forward, braking] = [0, 0, 0, 0];
  for (const { x, y } of all) {
    forward = Math.max(forward, most(x, 1));
    braking = Math.min(braking, -most(x, -1));
    left = Math.max(left, most(y, 1));
    right = Math.min(right, -most(y, -1));
  }
  const room = (side: number): number =>
    side === 0 ? 0 : (ROOM * side) / STANDARD_GRAVITY_MPS2 + Math.sign(side) * 0.02;
  return {
    left: room(left),
    right: room(right),
    forward: room(forward),
    braking: room(braking),
  };
}

const ROOM = 1.04;

function most(values: Float64Array, sign: number): number {
  return values.reduce((best, value) => Math.max(best, sign * value), 0);
}

/** The largest scale that fits, the same in both directions: a dot is about as wide as high. */
export function ggScale(span: GgSpan, most: Size): GgScale {
  const across = Math.max(0.1, span.left - span.right);
  const along = Math.max(0.1, span.forward - span.braking);
  const dotsPerG = Math.min(
    (most.cols * DOTS_ACROSS - 2) / across,
    (most.rows * DOTS_DOWN - 2) / along,
  );
  return {
    ...span,
    dotsPerG,
    size: {
      cols: Math.min(most.cols, Math.floor((dotsPerG * across + 1) / DOTS_ACROSS) + 1),
      rows: Math.min(most.rows, Math.floor((dotsPerG * along + 1) / DOTS_DOWN) + 1),
    },
    dotOf: (accelXMps2, accelYMps2) => ({
      x: (span.left - accelYMps2 / STANDARD_GRAVITY_MPS2) * dotsPerG,
      y: (span.forward - accelXMps2 / STANDARD_GRAVITY_MPS2) * dotsPerG,
    }),
  };
}
