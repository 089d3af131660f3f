import {
  metresFromFeet,
  metresPerSecondFromKmh,
  metresPerSecondFromMph,
  newtonsFromKgf,
  newtonsFromLbf,
  pascalsFromBar,
  pascalsFromPsi,
  radiansFromDegrees,
  STANDARD_GRAVITY_MPS2,
} from '../../units.ts';
import type { LogRole } from './log-roles.ts';

type Scale = Readonly<Record<string, number>>;

const LEVEL: Scale = { '%': 0.01, pct: 0.01, percent: 0.01, '1': 1, ratio: 1 };
const PRESSURE: Scale = {
  bar: pascalsFromBar(1),
  kpa: 1e3,
  mpa: 1e6,
  pa: 1,
  psi: pascalsFromPsi(1),
};
const ACCELERATION: Scale = { 'm/s^2': 1, mps2: 1, g: STANDARD_GRAVITY_MPS2 };

/** Degrees in the log's own sign: steering is the one angle that screens and records keep in degrees. */
const STEERING: Scale = { deg: 1, rad: 1 / radiansFromDegrees(1) };

/** Factor from each accepted unit to the one kept: SI, level 0..1, degrees of steering. */
const SCALES: Readonly<Record<LogRole, Scale>> = {
  time: { s: 1, sec: 1, ms: 1e-3, us: 1e-6, min: 60 },
  distance: { m: 1, km: 1e3, ft: metresFromFeet(1) },
  lap: { '': 1 },
  'brake-level': LEVEL,
  'brake-front': PRESSURE,
  'brake-rear': PRESSURE,
  'pedal-force': { n: 1, kn: 1e3, kgf: newtonsFromKgf(1), lbf: newtonsFromLbf(1) },
  speed: {
    'm/s': 1,
    mps: 1,
    'km/h': metresPerSecondFromKmh(1),
    kmh: metresPerSecondFromKmh(1),
    kph: metresPerSecondFromKmh(1),
    mph: metresPerSecondFromMph(1),
  },
  steering: STEERING,
  throttle: LEVEL,
  gear: { '': 1 },
  'lateral-acceleration': ACCELERATION,
  'longitudinal-acceleration': ACCELERATION,
  'yaw-rate': {
    'rad/s': 1,
    radps: 1,
    'deg/s': radiansFromDegrees(1),
    degps: radiansFromDegrees(1),
  },
};

/** The factor from a unit to the kept one, or null for a unit that the role cannot have. */
export function unitFactor(role: LogRole, unit: string): number | null {
  const scale = SCALES[role];
  return scale[''] ?? scale[folded(unit)] ?? null;
}

/** The accepted units of a role, for messages; empty for a role without one. */
export function unitsOf(role: LogRole): string[] {
  return Object.keys(SCALES[role]).filter((unit) => unit !== '');
}

const ALL: ReadonlySet<string> = new Set(
  Object.values(SCALES).flatMap((scale) => Object.keys(scale)),
);
/** Units of columns that nobody reads still make a row of units. */
const OTHERS: ReadonlySet<string> = new Set([
  '-',
  'c',
  'k',
  'v',
  'a',
  'rpm',
  '1/min',
  'nm',
  'l',
  'kg',
  'hz',
]);

/** True for the unit of a column that can be read, such as may end a name: `speed_kmh`. */
export function isReadUnit(word: string): boolean {
  return ALL.has(folded(word)) && /[\p{L}%]/u.test(word);
}

/** True for a word that is a unit of anything. */
export function isUnit(word: string): boolean {
  return ALL.has(folded(word)) || OTHERS.has(folded(word));
}

function folded(unit: string): string {
  return unit
    .trim()
    .toLowerCase()
    .replace(/²|\*\*2/g, '^2')
    .replace(/^m\/s\/s$|^m\/s2$|^ms-2$/, 'm/s^2')
    .replace(/[°\uFFFD]/g, 'deg')
    .replace(/^(degrees?)(?=$|\/)/, 'deg')
    .replace(/^seconds?$/, 's');
}
