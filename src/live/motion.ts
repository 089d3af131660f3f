import type { LiveCar } from './live-car.ts';

/** What is integrated over time, or the rate of each per second. Scratch: changed in place. */
export interface Motion {
  sM: number;
  speedMps: number;
  transferN: number;
  frontSlip: number;
  rearSlip: number;
  frontWorkJ: number;
  rearWorkJ: number;
}

export function motionOf(car: LiveCar): Motion {
  return {
    sM: car.sM,
    speedMps: car.speedMps,
    transferN: car.transferN,
    frontSlip: car.front.slip,
    rearSlip: car.rear.slip,
    frontWorkJ: car.workJ.front,
    rearWorkJ: car.workJ.rear,
  };
}

/** `to` becomes `from` after `stepS` at these rates; the car does not roll back, and wheels stay between rolling and locked. */
export function moveOn(from: Motion, rate: Motion, stepS: number, to: Motion): void {
  to.sM = from.sM + rate.sM * stepS;
  to.speedMps = Math.max(0, from.speedMps + rate.speedMps * stepS);
  to.transferN = from.transferN + rate.transferN * stepS;
  to.frontSlip = withinSlip(from.frontSlip + rate.frontSlip * stepS);
  to.rearSlip = withinSlip(from.rearSlip + rate.rearSlip * stepS);
  to.frontWorkJ = from.frontWorkJ + rate.frontWorkJ * stepS;
  to.rearWorkJ = from.rearWorkJ + rate.rearWorkJ * stepS;
}

function withinSlip(slip: number): number {
  return Math.min(1, Math.max(0, slip));
}
