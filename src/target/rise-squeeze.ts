import { type RiseShape, riseShare } from './rise-shape.ts';

/**
 * A hit that is not one push all the way: the push ends short of the peak, and the foot squeezes the rest on while the
 * load that its braking brings forward arrives on the front axle.
 */
export interface RiseSqueeze {
  /** Share of the peak that the push has reached when the squeeze begins. */
  readonly fromShare: number;
  /** Share of the rise's length that the push takes. */
  readonly afterShare: number;
  /** How many times what is missing falls to 1/e until the peak: the load arrives with a first-order lag. */
  readonly eFolds: number;
}

const HALVINGS = 50;

/**
 * Share of the peak at `u`, both 0..1, rising. Without a squeeze it is the shape itself; with one the push is the piece of
 * the shape from nothing to `fromShare`, and from there on 1 - (1 - fromShare) (e^(-k x) - e^-k) / (1 - e^-k).
 */
export function riseAlong(shape: RiseShape, squeeze?: RiseSqueeze): (u: number) => number {
  const push = riseShare(shape);
  if (squeeze === undefined) return push;
  const { fromShare, afterShare, eFolds } = squeeze;
  const reached = whereReached(push, fromShare);
  const rest = Math.exp(-eFolds);
  return (u) => {
    if (u <= afterShare) return push((u / afterShare) * reached);
    const x = (u - afterShare) / (1 - afterShare);
    return 1 - ((1 - fromShare) * (Math.exp(-eFolds * x) - rest)) / (1 - rest);
  };
}

/** Where a rising share of 0..1 has come to a value, by bisection. */
function whereReached(share: (u: number) => number, value: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (share(middle) < value) low = middle;
    else high = middle;
  }
  return high;
}
