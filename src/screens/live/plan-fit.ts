import type { Size } from '../cell-grid.ts';
import { DOTS_ACROSS, DOTS_DOWN } from '../dot-raster.ts';

/** A point of the road on the ground, m. */
export interface GroundPoint {
  readonly xM: number;
  readonly yM: number;
}

/** Turns metres on the ground into dots of an area: the same scale both ways, as a dot is about as wide as high. */
export interface PlanFit {
  readonly dotsPerM: number;
  dotOf(point: GroundPoint): { readonly x: number; readonly y: number };
}

const ANGLES = 24;

/** The rotation and scale that show a road largest in an area, driven from the left. */
export function planFit(road: readonly GroundPoint[], size: Size): PlanFit {
  const width = size.cols * DOTS_ACROSS - 1;
  const height = size.rows * DOTS_DOWN - 1;
  let best = turned(road, 0, width, height);
  for (let i = 1; i < ANGLES; i++) {
    const next = turned(road, (Math.PI * i) / ANGLES, width, height);
    if (next.scale > best.scale * (1 + 1e-9)) best = next;
  }
  const fromLeft = fitOf(best, width, height, 1);
  const [first, last] = [road[0], road.at(-1)];
  if (first === undefined || last === undefined) return fromLeft;
  return fromLeft.dotOf(first).x <= fromLeft.dotOf(last).x
    ? fromLeft
    : fitOf(best, width, height, -1);
}

interface Turned {
  readonly cos: number;
  readonly sin: number;
  readonly middle: readonly [number, number];
  readonly scale: number;
}

function turned(
  road: readonly GroundPoint[],
  angle: number,
  width: number,
  height: number,
): Turned {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { xM, yM } of road) {
    const [x, y] = [cos * xM - sin * yM, sin * xM + cos * yM];
    [left, right] = [Math.min(left, x), Math.max(right, x)];
    [low, high] = [Math.min(low, y), Math.max(high, y)];
  }
  const scale = Math.min(width / Math.max(1, right - left), height / Math.max(1, high - low));
  return { cos, sin, middle: [(left + right) / 2, (low + high) / 2], scale };
}

/** @param way 1, or -1 for half a turn more */
function fitOf(
  { cos, sin, middle, scale }: Turned,
  width: number,
  height: number,
  way: number,
): PlanFit {
  return {
    dotsPerM: scale,
    dotOf: ({ xM, yM }) => ({
      x: Math.round(width / 2 + way * scale * (cos * xM - sin * yM - middle[0])),
      y: Math.round(height / 2 - way * scale * (sin * xM + cos * yM - middle[1])),
    }),
  };
}
