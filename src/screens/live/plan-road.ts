import type { LivePlan } from '../../live/live-view.ts';
import type { Size } from '../cell-grid.ts';
import { createRaster, type DotRaster, setDot } from '../dot-raster.ts';
import { groundAt } from './ground-at.ts';
import type { GroundPoint, PlanFit } from './plan-fit.ts';

/** A place of the road on the ground. */
export interface RoadPlace extends GroundPoint {
  /** m from turn-in. */
  readonly sM: number;
}

/** Road shown before the first and after the last mark, as a share of what lies between them. */
const AROUND_SHARE = 0.15;
const STEPS = 300;

/** The stretch that holds all marks and a little more, in steps so short that they are straight. */
export function shownRoad({ road, marks }: LivePlan): readonly RoadPlace[] {
  const first = road[0]?.sM ?? 0;
  const last = road.at(-1)?.sM ?? 0;
  const places = marks.map(({ sM }) => sM);
  const [from, to] = [Math.min(...places), Math.max(...places)];
  const around = AROUND_SHARE * (to - from);
  const [start, end] = [Math.max(first, from - around), Math.min(last, to + around)];
  if (!(end > start)) return [];
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const sM = start + ((end - start) * i) / STEPS;
    return { sM, ...groundAt(road, sM) };
  });
}

/** The road as a line of dots that touch. */
export function roadRaster(road: readonly RoadPlace[], fit: PlanFit, size: Size): DotRaster {
  const raster = createRaster(size);
  let last = fit.dotOf(road[0]!);
  for (const point of road) {
    const next = fit.dotOf(point);
    const steps = Math.max(1, Math.abs(next.x - last.x), Math.abs(next.y - last.y));
    for (let i = 0; i <= steps; i++)
      setDot(
        raster,
        Math.round(last.x + ((next.x - last.x) * i) / steps),
        Math.round(last.y + ((next.y - last.y) * i) / steps),
      );
    last = next;
  }
  return raster;
}
