import { fixed } from '../number-text.ts';
import { distanceText, forceText, speedText, type TextUnits } from '../unit-text.ts';
import { pascalsFromBar, psiFromPascals, STANDARD_GRAVITY_MPS2 } from '../units.ts';
import { keyNumbers } from './key-numbers.ts';
import { overTime } from './over-time.ts';
import type { Target, TargetMarks } from './target.ts';

/** The numbers of a target as lines of text: key points, durations and rates, and what the curve leaves out. */
export function targetTable(target: Target, units: TextUnits): readonly string[] {
  return [...markLines(target, units), '', ...numberLines(target, units), '', ...caveats(target)];
}

const MARK_NAMES: readonly (readonly [keyof TargetMarks, string])[] = [
  ['rise', 'start of the rise'],
  ['peak', 'peak'],
  ['startOfRelease', 'start of release'],
  ['turnIn', 'turn-in'],
  ['finalRelease', 'final release'],
  ['brakeOff', 'brake off'],
  ['apex', 'apex'],
];

function markLines(target: Target, units: TextUnits): string[] {
  const timed = overTime(target);
  return MARK_NAMES.flatMap(([key, name]) => {
    const timeS = timed.marks[key];
    const place = target.marks[key];
    if (timeS === null || place === null) return [];
    const distance = target.domain === 'distance' ? distanceText(place, units).padStart(9) : '';
    const level = `${percent(timed.level.at(timeS), 1)} %`.padStart(9);
    return [{ timeS, line: `${row(name)}${fixed(timeS, 2).padStart(6)} s${distance}${level}` }];
  })
    .toSorted((a, b) => a.timeS - b.timeS)
    .map(({ line }) => line);
}

function numberLines(target: Target, units: TextUnits): string[] {
  const { riseS, releaseS, meanReleaseRate, steepestReleaseRate, overlap } = keyNumbers(target);
  const { marks, corridorAt } = target;
  const rates = `mean ${percent(meanReleaseRate, 0)} %/s, steepest ${percent(steepestReleaseRate, 0)} %/s`;
  const half = (place: number): string => `${percent(corridorAt(place), 1)} %`;
  return [
    `${row('rise')}${fixed(riseS, 2)} s from 10 to 90 %`,
    `${row('release')}${fixed(releaseS, 2)} s, ${rates}`,
    `${row('corridor')}half width ${half(marks.peak)} at the peak, ${half(marks.brakeOff)} at brake off`,
    ...(overlap === null
      ? []
      : [`${row('trail braking')}${percent(overlap, 0)} % of the braking time`]),
    ...steeringLine(target),
    ...gearLine(target),
    ...speedLines(target, units),
    ...fullScaleLine(target, units),
  ];
}

function steeringLine({ steering, domain }: Target): string[] {
  if (steering === null) return [];
  const angle = steering.at(domain === 'time' ? steering.end : steering.start);
  return [
    `${row('steering')}${fixed(Math.abs(angle), 0)}° ${angle < 0 ? 'right' : 'left'} at its end`,
  ];
}

function gearLine(target: Target): string[] {
  const { gears } = overTime(target);
  if (gears.length === 0) return [];
  return [
    `${row('gears')}${gears.map(({ at, gear }) => `${gear} at ${fixed(at, 2)} s`).join(', ')}`,
  ];
}

function speedLines(target: Target, units: TextUnits): string[] {
  const { peakDecelerationMps2 } = keyNumbers(target);
  if (target.speeds === null || peakDecelerationMps2 === null) return [];
  const { entryMps, slowestMps } = target.speeds;
  return [
    `${row('speed')}${speedText(entryMps, units)} to ${speedText(slowestMps, units)}`,
    `${row('deceleration')}${fixed(peakDecelerationMps2 / STANDARD_GRAVITY_MPS2, 2)} g at the peak`,
  ];
}

function fullScaleLine({ fullScale }: Target, units: TextUnits): string[] {
  const { pedalForceN, pressureBar } = fullScale;
  const parts = [
    ...(pedalForceN === null ? [] : [forceText(pedalForceN, units)]),
    ...(pressureBar === null ? [] : [pressureText(pressureBar, units)]),
  ];
  return parts.length === 0 ? [] : [`${row('full scale')}${parts.join(', ')}`];
}

function caveats({ domain, learnedFrom }: Target): string[] {
  if (learnedFrom !== null)
    return [
      `Learned from ${learnedFrom}: what was done, not what could be`,
      'done. Left out: speed, grip, downforce, slope, bumps, heat.',
    ];
  return domain === 'distance'
    ? [
        'Over time by taking deceleration proportional to the level, from entry speed',
        'to slowest speed. Left out: drag, downforce, engine braking, slope, grip,',
        'bumps, heat.',
      ]
    : [
        'A curve over time as the coach drew it. Left out: speed, grip, downforce,',
        'slope, bumps, heat.',
      ];
}

function row(name: string): string {
  return `${name.padEnd(20)}`;
}

function percent(level: number, decimals: number): string {
  return fixed(100 * level, decimals);
}

function pressureText(bar: number, units: TextUnits): string {
  return units === 'metric'
    ? `${fixed(bar, 0)} bar`
    : `${fixed(psiFromPascals(pascalsFromBar(bar)), 0)} psi`;
}
