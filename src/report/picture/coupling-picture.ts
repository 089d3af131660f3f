import { scaleLinear } from 'd3-scale';
import {
  couplingReading,
  type SteeringCoupling,
  steeringAtShare,
} from '../../drill/diagnosis/steering-coupling.ts';
import type { Markup } from '../markup/markup.ts';
import { levelAxis, uprightAxis } from './axes.ts';
import { linePath, type Scales } from './curves.ts';
import { legend } from './legend.ts';
import type { DataTable, Picture } from './picture.ts';
import { plotBox } from './plot.ts';

/** A rep's brake and wheel; null where no wheel was recorded. */
interface CoupledRep {
  readonly number: number;
  readonly coupling: SteeringCoupling | null;
}

interface CouplingSubject {
  readonly id: string;
  readonly title: string;
  readonly reps: readonly CoupledRep[];
  /** Null for a target that leaves steering to the driver. */
  readonly target: SteeringCoupling | null;
}

const PLOT_HEIGHT = 190;

/** Brake against wheel from the peak to brake off: down the left edge is straight, along the base is off the brake. */
export function couplingPicture({ id, title, reps, target }: CouplingSubject): Picture | null {
  const driven = reps.flatMap(({ coupling }) => coupling ?? []);
  if (driven.length === 0) return null;
  const all = target === null ? driven : [...driven, target];
  const side = sideOf(all);
  const axis = `wheel, degrees ${side > 0 ? 'left' : 'right'}`;
  const key = legend([
    ...(target === null ? [] : [{ name: 'target', sample: 'line', look: 'target' } as const]),
    { name: 'reps', sample: 'line', look: 'rep' },
  ]);
  const box = plotBox(key.height, PLOT_HEIGHT);
  const x = scaleLinear()
    .domain([
      Math.min(0, ...all.map((one) => least(one, side))),
      Math.max(10, ...all.map((one) => -least(one, -side))),
    ])
    .range([box.left, box.right]);
  const y = scaleLinear()
    .domain([
      0,
      1.05 * Math.max(0.01, ...all.map(({ level }) => level.reduce((a, b) => Math.max(a, b), 0))),
    ])
    .range([box.bottom, box.top]);
  const percent = (level: number): string => String(Math.round(100 * level));
  return {
    id,
    title,
    reading: couplingReading(driven, target),
    height: box.bottom + 38,
    marks: [
      ...key.marks,
      ...uprightAxis(
        { scale: y, name: 'brake, % of full scale', text: percent, ticks: y.ticks(5) },
        box,
      ),
      ...levelAxis(
        {
          scale: x,
          name: axis,
          text: String,
          ticks: x.ticks(6),
        },
        box,
      ),
      ...curves(reps, target, side, { x, y }),
    ],
    table: tableOf(reps, target, side, axis),
  };
}

function curves(
  reps: readonly CoupledRep[],
  target: SteeringCoupling | null,
  side: number,
  scales: Scales,
): Markup[] {
  const path = ({ level, steeringDeg }: SteeringCoupling, look: string): Markup =>
    linePath(
      steeringDeg.map((angle) => side * angle),
      level,
      scales,
      look,
    );
  const all = (look: string): Markup[] =>
    reps.flatMap(({ number, coupling }) =>
      coupling === null ? [] : [path(coupling, `${look} r${number}`)],
    );
  return [...all('rep'), ...(target === null ? [] : [path(target, 'target')]), ...all('picked')];
}

/** 1 where most turn left, else -1. */
function sideOf(all: readonly SteeringCoupling[]): number {
  const last = all.map(({ steeringDeg }) => Math.sign(steeringDeg.at(-1) ?? 0));
  return last.reduce((sum, sign) => sum + sign, 0) < 0 ? -1 : 1;
}

function least({ steeringDeg }: SteeringCoupling, side: number): number {
  return steeringDeg.reduce((low, angle) => Math.min(low, side * angle), Number.POSITIVE_INFINITY);
}

/** The wheel where the brake has fallen to shares of its peak. */
const SHARES = [0.9, 0.75, 0.5, 0.25, 0.1] as const;

/** Signs as the picture has them, so that no reader has to turn one of both round. */
function tableOf(
  reps: readonly CoupledRep[],
  target: SteeringCoupling | null,
  side: number,
  axis: string,
): DataTable {
  const cells = (coupling: SteeringCoupling | null): string[] =>
    SHARES.map((share) => {
      const angle = coupling === null ? null : steeringAtShare(coupling, share);
      return angle === null ? '-' : String(Math.round(side * angle));
    });
  return {
    heads: [`${axis}, with the brake at`, ...SHARES.map((s) => `${100 * s} % of its peak`)],
    rows: [
      ...(target === null ? [] : [['target', ...cells(target)]]),
      ...reps.map(({ number, coupling }) => [`rep ${number}`, ...cells(coupling)]),
    ],
  };
}
