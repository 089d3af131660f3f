import { fixed, signed } from '../../number-text.ts';
import { distanceText, speedText, type TextUnits } from '../../unit-text.ts';
import type { DerivedTarget } from './derive-target.ts';
import { EXIT_LEFT_OUT } from './left-out.ts';
import type { DrivenParts, TimeDifference } from './time-difference.ts';

/** The parts of a driven corner that add up to its time, in driving order, with their names on the screen. */
const PARTS: readonly (readonly [keyof DrivenParts & `${string}S`, string])[] = [
  ['straightS', 'straight before the brake'],
  ['brakingS', 'brake point to slowest'],
  ['cornerExitS', 'slowest to end of corner'],
  ['exitStraightS', 'exit straight'],
  ['totalS', 'in all'],
  ['shiftingS', 'of it upshifts'],
];

/** A time difference and its parts as lines of text. */
export function timeDifferenceTable(
  difference: TimeDifference,
  other: DerivedTarget,
  units: TextUnits,
): readonly string[] {
  const { one, other: against, lengthM, beforeApexM, afterApexM } = difference;
  const from = distanceText(beforeApexM, units);
  const to = distanceText(afterApexM, units);
  return [
    `Against ${other.corner.variant}, gear ${other.corner.gears.slowest} at the slowest point: ${verdict(one.totalS - against.totalS)}`,
    `over ${distanceText(lengthM, units)}, from ${from} before the apex to ${to} after it.`,
    '',
    line('', 'this', 'other', 'difference'),
    ...PARTS.map(([key, name]) =>
      line(
        name,
        seconds(one[key]),
        seconds(against[key]),
        `${signed(one[key] - against[key], 3)} s`,
      ),
    ),
    line('upshifts', `${one.upshifts.length}`, `${against.upshifts.length}`, ''),
    line(
      'speed at the exit',
      speedText(one.exitSpeedMps, units),
      speedText(against.exitSpeedMps, units),
      '',
    ),
    '',
    'Left out of the exit:',
    ...EXIT_LEFT_OUT.map((text) => `  ${text}`),
  ];
}

function verdict(differenceS: number): string {
  if (fixed(differenceS, 3) === '0.000') return 'the same time';
  return `${fixed(Math.abs(differenceS), 3)} s ${differenceS < 0 ? 'quicker' : 'slower'}`;
}

function seconds(value: number): string {
  return `${fixed(value, 3)} s`;
}

function line(name: string, one: string, other: string, difference: string): string {
  return `${name.padEnd(26)}${one.padStart(10)}${other.padStart(11)}${difference.padStart(13)}`.trimEnd();
}
