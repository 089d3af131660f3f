import { degreesFromRadians, kmhFromMetresPerSecond } from '../units.ts';
import type { CornerSheet } from './corner-sheet.ts';
import {
  brakingDistanceM,
  DEFAULT_GRIP,
  FIRST_LAP_GRIP,
  type FiveNumberMarks,
  type FiveNumbers,
  lineFromFiveNumbers,
  marksOfLine,
} from './five-numbers.ts';
import type { Line } from './line.ts';
import { readCornerSheet } from './read-corner-sheet.ts';

interface FiveNumberOptions {
  readonly name: string;
  readonly direction: 'left' | 'right';
  /** Friction taken for the car. */
  readonly grip: number;
}

export interface FiveNumberSheet {
  /** The sheet as a file to keep and to mend, with comments. */
  readonly text: string;
  readonly sheet: CornerSheet;
  readonly marks: FiveNumberMarks;
}

const DEFAULTS: FiveNumberOptions = { name: 'New corner', direction: 'left', grip: DEFAULT_GRIP };
/** Speed in a gear over speed in the one below it (common practice, no source). */
const GEAR_STEP = 1.3;
const HIGHEST_GEAR = 8;
/** The approach has to be long enough for a wet road too. */
const WET_GRIP = 0.55;

/**
 * A corner sheet for a corner that nobody has driven yet, with the marks to start from.
 * @throws Problem (exit code 2) where the numbers contradict each other
 */
export function sheetFromFiveNumbers(
  numbers: FiveNumbers,
  options: Partial<FiveNumberOptions> = {},
): FiveNumberSheet {
  const all = { ...DEFAULTS, ...options };
  const line = roundedLine(lineFromFiveNumbers(numbers, all.grip));
  const marks = marksOfLine(line, numbers, all.grip);
  const text = sheetText(numbers, all, line, marks);
  return { text, sheet: readCornerSheet(text, `${all.name}.yaml`), marks };
}

/** As the file says it, so that file and marks agree. */
function roundedLine(line: Line): Line {
  const tenths = (metres: number): number => Math.max(0.1, Math.floor(10 * metres) / 10);
  return { ...line, radiusM: Number(line.radiusM.toFixed(1)), entryM: tenths(line.entryM) };
}

function sheetText(
  numbers: FiveNumbers,
  { name, direction, grip }: FiveNumberOptions,
  line: Line,
  { goalM, perGripM, firstLapM }: FiveNumberMarks,
): string {
  const { approachSpeedMps, slowestSpeedMps, turnRad, gear } = numbers;
  const kmh = (mps: number): string => String(Number(kmhFromMetresPerSecond(mps).toFixed(1)));
  const longest = brakingDistanceM(line, numbers, WET_GRIP * grip) - line.entryM;
  return `# yaml-language-server: $schema=../schema/corner.schema.json
#
# Made from five numbers: ${kmh(approachSpeedMps)} km/h down to ${kmh(slowestSpeedMps)} km/h within ${numbers.zoneLengthM} m, ${degrees(turnRad)} degrees, gear ${gear}.
# With a grip of ${grip}, without drag and downforce:
#   goal mark       ${goalM.toFixed(0)} m before the slowest point
#   first-lap mark  ${firstLapM.toFixed(0)} m before it: what ${100 - 100 * FIRST_LAP_GRIP} % less grip would need
#   0.05 less grip moves the brake point ${perGripM.toFixed(1)} m back.
# Correct what you learn; the car's own file makes better marks than these.
name: ${JSON.stringify(name)}
corner_type: new
direction: ${direction}

line:
  entry: smooth-apex
  turn_deg: ${degrees(turnRad)}
  radius_m: ${line.radiusM} # from the slowest speed and the grip
  entry_length_m: ${line.entryM} # turn-in to apex, from the length of the zone

approach_speed_kmh: ${kmh(approachSpeedMps)}
approach_length_m: ${10 * Math.ceil(longest / 10)}

gears:
  approach: ${approachGear(numbers)} # a guess from the speeds
  slowest: ${gear}

variants:
  - variant: qualifying
  - variant: race
    grip_share: 0.95
  - variant: wet
    grip_factor: 0.65
`;
}

function degrees(rad: number): number {
  return Number(degreesFromRadians(rad).toFixed(1));
}

/** A guess at the gear of the approach, by the speeds in it and in the slowest gear. */
export function approachGear({
  gear,
  approachSpeedMps,
  slowestSpeedMps,
}: Pick<FiveNumbers, 'gear' | 'approachSpeedMps' | 'slowestSpeedMps'>): number {
  const steps = Math.log(approachSpeedMps / slowestSpeedMps) / Math.log(GEAR_STEP);
  return Math.max(gear, Math.min(HIGHEST_GEAR, gear + Math.round(steps)));
}
