import { axleForcesN, type Brakes, linePressuresPa } from './brakes.ts';
import type { Axles } from './chassis.ts';
import { beforeValvePa } from './rear-valve.ts';

/** Friction-brake force of each axle for a pedal force, N, while the wheels roll. */
export function brakeForcesN(brakes: Brakes, pedalForceN: number): Axles {
  return axleForcesN(brakes, linePressuresPa(brakes, pedalForceN));
}

/**
 * Pedal force for a friction-brake force of both axles together, N, with push-out and rear valve: the inverse of
 * `brakeForcesN`, exact because that is straight between the places where pads touch or the valve closes in.
 *
 * @returns the force at which the pads touch for no brake force
 */
export function pedalForceOf(brakes: Brakes): (brakeForceN: number) => number {
  const total = (pedalN: number): number => {
    const { front, rear } = brakeForcesN(brakes, pedalN);
    return front + rear;
  };
  const bends = pedalBendsN(brakes);
  const totals = bends.map(total);
  const last = bends.length - 1;
  const ends = [...bends.slice(1), (bends[last] as number) + 1];
  const perNewton = bends.map((from, i) => {
    const to = ends[i] as number;
    return (to - from) / (total(to) - (totals[i] as number));
  });
  return (brakeForceN) => {
    let i = 0;
    while (i < last && (totals[i + 1] as number) <= brakeForceN) i++;
    const beyondN = Math.max(0, brakeForceN - (totals[i] as number));
    return (bends[i] as number) + beyondN * (perNewton[i] as number);
  };
}

/** Pedal forces at which a pad touches or the valve closes in, rising; below the first there is no braking. */
export function pedalBendsN(brakes: Brakes): number[] {
  const perNewton = linePressuresPa({ ...brakes, rearValve: null }, 1);
  const touching = [
    brakes.pushOutPa / perNewton.front,
    beforeValvePa(brakes.rearValve, brakes.pushOutPa) / perNewton.rear,
  ].filter(Number.isFinite);
  const first = Math.min(...touching);
  const knee = brakes.rearValve === null ? [] : [brakes.rearValve.kneePa / perNewton.rear];
  return [...touching, ...knee].filter((pedalN) => pedalN >= first).sort((a, b) => a - b);
}
