import { degreesFromRadians, kmhFromMetresPerSecond } from '../../units.ts';
import type { Figure } from './zone-fit.ts';

/** How a figure is written: as data, and for people. */
interface FigureWords {
  readonly label: string;
  /** Field name in JSON, which ends in its unit. */
  readonly field: string;
  readonly kind: 'speed' | 'distance' | 'angle' | 'gear' | 'share';
  readonly decimals: number;
}

export const FIGURE_WORDS: Readonly<Record<Figure, FigureWords>> = {
  approachSpeedMps: speed('approach speed', 'approach_speed_kmh'),
  brakePointM: distance('brake point', 'brake_point_before_slowest_m'),
  turnInM: distance('turn-in', 'turn_in_before_slowest_m'),
  slowestSpeedMps: speed('slowest speed', 'slowest_speed_kmh'),
  radiusM: distance('radius', 'radius_m'),
  entryM: distance('entry length', 'entry_length_m'),
  exitM: distance('exit length', 'exit_length_m'),
  turnRad: { label: 'angle turned', field: 'turn_deg', kind: 'angle', decimals: 1 },
  endSpeedMps: speed('exit speed', 'exit_speed_kmh'),
  approachGear: gear('gear on approach', 'approach_gear'),
  slowestGear: gear('gear at slowest', 'slowest_gear'),
  lastDownshiftM: distance('last downshift', 'last_downshift_before_slowest_m'),
  brakingGripShare: share('grip for braking', 'braking_grip_share'),
  turningGripShare: share('grip for turning', 'turning_grip_share'),
};

function speed(label: string, field: string): FigureWords {
  return { label, field, kind: 'speed', decimals: 1 };
}

function distance(label: string, field: string): FigureWords {
  return { label, field, kind: 'distance', decimals: 1 };
}

function gear(label: string, field: string): FigureWords {
  return { label, field, kind: 'gear', decimals: 0 };
}

function share(label: string, field: string): FigureWords {
  return { label, field, kind: 'share', decimals: 3 };
}

/** A value in the unit of its field, rounded as it is written; no negative zero. */
export function inFileUnit(figure: Figure, value: number): number {
  const { kind, decimals } = FIGURE_WORDS[figure];
  const inUnit =
    kind === 'speed'
      ? kmhFromMetresPerSecond(value)
      : kind === 'angle'
        ? degreesFromRadians(value)
        : value;
  return Number(inUnit.toFixed(decimals)) + 0;
}

/** With its unit, metric. */
export function metricText(figure: Figure, value: number): string {
  const number = inFileUnit(figure, value);
  const { kind, decimals } = FIGURE_WORDS[figure];
  if (kind === 'share') return `${Math.round(100 * number)} %`;
  if (kind === 'gear') return `${number}`;
  const unit = kind === 'speed' ? 'km/h' : kind === 'angle' ? 'deg' : 'm';
  return `${number.toFixed(decimals)} ${unit}`;
}

/** Lowest and highest, the unit once. */
export function rangeText(low: string, high: string): string {
  if (low === high) return `all ${low}`;
  const [from, unit] = low.split(' ');
  return high.endsWith(` ${unit}`) ? `${from} to ${high}` : `${low} to ${high}`;
}
