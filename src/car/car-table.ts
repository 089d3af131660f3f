import { forceText, massText, pressureText, speedText, type TextUnits } from '../unit-text.ts';
import { feetFromMetres } from '../units.ts';
import { frontBrakeShare } from './brakes.ts';
import type { Car } from './car.ts';
import { limitsOverSpeed } from './car-limits.ts';
import type { StraightLimit } from './straight-limit.ts';

const STEPS = 6;

function heightText(metres: number, units: TextUnits): string {
  return units === 'metric'
    ? `${metres.toFixed(2)} m`
    : `${(12 * feetFromMetres(metres)).toFixed(1)} in`;
}

/** The straight-line limits over speed as rows of cells, heads first. */
export function limitRows(car: Car, units: TextUnits): readonly (readonly string[])[] {
  const heads = ['speed', 'limit', 'pedal', 'level', 'front', 'rear', 'share', 'first', 'margin'];
  const rows = limitsOverSpeed(car, STEPS).toReversed();
  return [heads, ...rows.map((limit) => limitCells(limit, car, units))];
}

function limitCells(limit: StraightLimit, car: Car, units: TextUnits): string[] {
  return [
    speedText(limit.speedMps, units),
    `${limit.decelerationG.toFixed(2)} g`,
    forceText(limit.pedalForceN, units),
    `${((100 * limit.pedalForceN) / car.fullScalePedalForceN).toFixed(0)} %`,
    pressureText(limit.pressuresPa.front, units),
    pressureText(limit.pressuresPa.rear, units),
    `${(100 * limit.frontShare).toFixed(1)} %`,
    limit.locksFirst,
    limit.marginG === null ? 'never' : `${limit.marginG.toFixed(2)} g`,
  ];
}

/** What a driver has to know of the car beside its limits. */
export function carLines(car: Car, units: TextUnits): readonly string[] {
  const { brakes, gearbox, antiLock, electric } = car;
  const { front, rear } = car.discStartC;
  return [
    `${row('mass')}${massText(car.chassis.massKg, units)}, centre of gravity ${heightText(car.chassis.cgHeightM, units)} high`,
    `${row('brakes')}${(100 * frontBrakeShare(brakes)).toFixed(1)} % in front, ${brakes.rearValve === null ? 'no rear valve' : `rear valve from ${pressureText(brakes.rearValve.kneePa, units)}`}, ${antiLock === null ? 'no anti-lock' : 'anti-lock'}`,
    `${row('balance')}${idealText(car)}`,
    `${row('pads')}friction ${brakes.front.padFriction.toFixed(2)} front, ${brakes.rear.padFriction.toFixed(2)} rear, discs at ${front} and ${rear} C`,
    `${row('tyres')}friction ${car.tyres.front.longitudinalFriction.toFixed(2)} front, ${car.tyres.rear.longitudinalFriction.toFixed(2)} rear, at ${car.tyreStartC} C`,
    `${row('gears')}${gearbox.ratios.length}, to ${gearbox.revLimitRpm} rpm, ${gearbox.blip ? 'with a blip' : 'no blip'}`,
    ...(electric === null
      ? []
      : [
          `${row('motor')}brakes the rear axle with up to ${(electric.powerW / 1000).toFixed(0)} kW, gone at ${speedText(electric.fadeOutMps, units)}`,
        ]),
    `${row('driver')}up to ${forceText(car.driver.peakPedalForceN, units)} in ${car.driver.riseS.toFixed(2)} s; full scale is ${forceText(car.fullScalePedalForceN, units)}`,
  ];
}

/** What a coach holds the brake balance against. */
function idealText(car: Car): string {
  const ideals = limitsOverSpeed(car, STEPS).map(({ idealFrontShare }) => 100 * idealFrontShare);
  const [least, most] = [Math.min(...ideals), Math.max(...ideals)].map((share) => share.toFixed(1));
  const shares = least === most ? least : `${least} to ${most}`;
  return `both axles would lock together with ${shares} % in front`;
}

function row(name: string): string {
  return name.padEnd(9);
}
