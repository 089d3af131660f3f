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
export function pedalForceForN(brakes: Brakes, brakeForceN: number): number {
  const total = (pedalN: number): number => {
    const { front, rear } = brakeForcesN(brakes, pedalN);
    return front + rear;
  };
  const bends = pedalBendsN(brakes);
  const next = bends.findIndex((pedalN, i) => i > 0 && total(pedalN) > brakeForceN);
  const from = bends[(next === -1 ? bends.length : next) - 1] as number;
  const to = next === -1 ? from + 1 : (bends[next] as number);
  const start = total(from);
  return from + (Math.max(0, brakeForceN - start) * (to - from)) / (total(to) - start);
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
