import type { Car } from '../../car/car.ts';
import { overRevSpeedMps } from '../../car/gearbox.ts';
import { omissionLines } from '../../car/omission.ts';
import { fixed, percentText } from '../../number-text.ts';
import {
  distanceText,
  forceText,
  pressureText,
  speedText,
  type TextUnits,
} from '../../unit-text.ts';
import type { DerivedTarget } from './derive-target.ts';
import type { SolvedZone } from './derive-zone.ts';
import type { Downshift } from './downshifts.ts';
import { LEFT_OUT } from './left-out.ts';
import { shiftMarginText } from './shift-margin-text.ts';
import { type BumpMargin, FULL_SCALE, type ZoneKeyPoints } from './zone-key-points.ts';

/** The numbers of a derived target as lines of text, what the model leaves out at their end. */
export function zoneTable(derived: DerivedTarget, units: TextUnits): readonly string[] {
  return [
    ...keyLines(derived, units),
    '',
    ...limitLines(derived, units),
    ...derived.zone.downshifts.map((shift) => shiftLine(derived, shift, units)),
    ...derived.bumps.map((margin) => bumpLine(derived, margin, units)),
    ...driverLines(derived, units),
    '',
    'Left out, and which way the target errs for it:',
    ...omissionLines(LEFT_OUT),
  ];
}

const KEY_NAMES: readonly (readonly [keyof ZoneKeyPoints, string])[] = [
  ['brakePoint', 'brake point'],
  ['peak', 'peak'],
  ['startOfRelease', 'start of release'],
  ['turnIn', 'turn-in'],
  ['apex', 'apex'],
  ['slowest', 'slowest point'],
];

function keyLines({ keys }: DerivedTarget, units: TextUnits): string[] {
  return KEY_NAMES.map(([key, name]) => ({ name, point: keys[key] }))
    .toSorted((a, b) => a.point.sM - b.point.sM)
    .map(({ name, point }) =>
      [
        row(name),
        distanceText(point.distanceM, units).padStart(8),
        `${fixed(point.timeS, 2)} s`.padStart(8),
        speedText(point.speedMps, units).padStart(10),
        percentText(point.level, 1).padStart(9),
        pressureText(point.pressureFrontPa, units).padStart(10),
        forceText(point.pedalForceN, units).padStart(9),
      ].join(''),
    );
}

function limitLines(derived: DerivedTarget, units: TextUnits): string[] {
  const { lock, straightBleed, zone } = derived;
  const bled = pressureText(straightBleed.pressurePa, units);
  const footLossS = zone.footLossS();
  const over = distanceText(straightBleed.from.distanceM - straightBleed.to.distanceM, units);
  return [
    `${row('locks first')}${lock.axle} axle, ${lock.marginG === null ? 'and the other never' : `${fixed(lock.marginG, 2)} g before the other`} at the approach speed`,
    ...hitLines(derived),
    `${row('straight bleed')}${bled} (${percentText(straightBleed.level, 1)}) over ${over}, before the wheel turns`,
    ...(footLossS > 0.0005
      ? [`${row('foot')}${fixed(footLossS, 3)} s lost because it only eases, and no faster`]
      : []),
  ];
}

function hitLines({ pushEnd, keys: { peak } }: DerivedTarget): string[] {
  if (pushEnd === null) return [];
  const [pushS, restS] = [pushEnd.timeS, peak.timeS - pushEnd.timeS].map((s) => fixed(s, 2));
  return [
    `${row('hit')}${percentText(pushEnd.level, 1)} in one push of ${pushS} s, the rest in ${restS} s as load comes forward`,
  ];
}

function shiftLine({ car, zone }: DerivedTarget, shift: Downshift, units: TextUnits): string {
  const place = (atM: number): string => distanceText(zone.slowestM - atM, units);
  const earliest =
    shift.earliestM === null
      ? nowhereSafe(car, zone, shift.toGear)
      : `earliest safe place ${place(shift.earliestM)}`;
  return (
    `${row(`gear ${shift.fromGear} to ${shift.toGear}`)}at ${place(shift.atM)} (${earliest}), ` +
    `${fixed(shift.rpm, 0)} rpm, ${shiftMarginText(shift)}`
  );
}

/** Why a downshift has no safe place: the lower gear over-revs even where the car is slowest, or the rear axle lets go. */
function nowhereSafe({ gearbox }: Car, { points }: SolvedZone, toGear: number): string {
  const slowest = points[points.length - 1]?.speedMps ?? 0;
  const overRevs = slowest > overRevSpeedMps(gearbox, toGear);
  return `nowhere safe: ${overRevs ? 'it over-revs even at the slowest point' : 'the rear axle lets go'}`;
}

function bumpLine(
  { zone }: DerivedTarget,
  { bump, rearUse, ease }: BumpMargin,
  units: TextUnits,
): string {
  const margin = Number.isFinite(rearUse) ? percentText(1 - rearUse) : 'none';
  const advice = ease > 0 ? `, ease ${percentText(ease)} over it` : '';
  const at = distanceText(zone.slowestM - bump.atM, units);
  return `${row('bump')}at ${at}, rear margin ${margin}${advice}`;
}

/** A rise below this is within the narrowest corridor. */
const WORTH_SAYING = 0.03;

function driverLines(derived: DerivedTarget, units: TextUnits): string[] {
  const { car, corner, zone, keys, risesAgainLevel } = derived;
  const { peakPedalForceN } = car.driver;
  return [
    `${row('full scale')}${forceText(car.fullScalePedalForceN, units)}`,
    ...(risesAgainLevel > WORTH_SAYING
      ? [
          `Caution: the level rises again by ${percentText(risesAgainLevel)}; drawing and target file run through the middle.`,
        ]
      : []),
    ...tooSlowCar(derived, units),
    ...(keys.peak.level >= FULL_SCALE
      ? [
          'Caution: the grip would take more than full scale; the target brakes earlier, with all of it.',
        ]
      : []),
    ...(zone.tooFastMps > 0
      ? [
          `Caution: from ${speedText(corner.approachSpeedMps, units)} the corner cannot be made: even braking from the start`,
          `of the zone it is ${speedText(zone.tooFastMps, units)} too fast where the limit is reached.`,
        ]
      : []),
    ...(zone.unsettledM > 0
      ? [
          'Caution: loads and brakes did not settle on each other;',
          'each round of them still moves the level a little.',
        ]
      : []),
    ...(keys.peak.pedalForceN > peakPedalForceN
      ? [
          `Caution: the peak asks for ${forceText(keys.peak.pedalForceN, units)}; this driver pushes ${forceText(peakPedalForceN, units)} at most.`,
        ]
      : []),
  ];
}

/** A sheet may ask for a speed that the car does not have in the approach gear. */
function tooSlowCar({ car, corner }: DerivedTarget, units: TextUnits): string[] {
  const { approach } = corner.gears;
  if (approach > car.gearbox.ratios.length) {
    return [
      `Caution: this car has ${car.gearbox.ratios.length} gears; the approach asks for gear ${approach}.`,
    ];
  }
  const most = overRevSpeedMps(car.gearbox, approach);
  if (corner.approachSpeedMps <= most) return [];
  return [
    `Caution: in gear ${approach} this car is at its rev limit at ${speedText(most, units)}: it does not come here`,
    `at ${speedText(corner.approachSpeedMps, units)}. Give the sheet a variant with the speed it reaches.`,
  ];
}

function row(name: string): string {
  return name.padEnd(18);
}
