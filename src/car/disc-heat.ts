/** One brake disc as a single lump of heat. */
export interface Disc {
  readonly massKg: number;
  readonly specificHeatJpkgK: number;
  readonly coolingAreaM2: number;
  /** Heat transfer at rest, and per rad/s of wheel speed, W/(m^2 K). */
  readonly coolingAtRestWpm2K: number;
  readonly coolingPerRadpsWpm2K: number;
  /** Share of the brake heat that goes into the disc, 0.9 to 0.99. */
  readonly heatShare: number;
}

/** Temperature rise of a disc that takes an energy in a time too short to cool, K. */
export function heatRiseK(disc: Disc, energyJ: number): number {
  return (disc.heatShare * energyJ) / (disc.massKg * disc.specificHeatJpkgK);
}

/** Time constant of cooling at a wheel speed, s. */
export function coolingTimeS(disc: Disc, wheelSpeedRadps: number): number {
  const transfer = disc.coolingAtRestWpm2K + disc.coolingPerRadpsWpm2K * wheelSpeedRadps;
  return (disc.massKg * disc.specificHeatJpkgK) / (transfer * disc.coolingAreaM2);
}

/** Temperature after cooling for `durationS` towards the air, by Newton's law. @source Holman, Heat Transfer, ch. 4 */
export function cooledC(
  startC: number,
  airC: number,
  durationS: number,
  timeConstantS: number,
): number {
  return airC + (startC - airC) * Math.exp(-durationS / timeConstantS);
}

/**
 * Peak temperature right after the n-th of equal stops that each add `riseK`, with `everyS` between them; n Infinity
 * gives the limit. @source Limpert, Brake Design and Safety, ch. 3 (repeated braking)
 */
export function repeatedStopsPeakC(
  airC: number,
  riseK: number,
  everyS: number,
  timeConstantS: number,
  stops: number,
): number {
  const x = everyS / timeConstantS;
  return airC + (riseK * (1 - Math.exp(-stops * x))) / (1 - Math.exp(-x));
}

/**
 * Braking work, J: loss of kinetic energy, rotating parts included, less what drag and engine took.
 * @param rotatingShare rotating inertia as a share of the mass, 0.03 to 0.10
 */
export function brakingWorkJ(
  massKg: number,
  speeds: { readonly fromMps: number; readonly toMps: number },
  rotatingShare: number,
  otherWorkJ: number,
): number {
  return (
    0.5 * massKg * (1 + rotatingShare) * (speeds.fromMps ** 2 - speeds.toMps ** 2) - otherWorkJ
  );
}

/** Surface flash of a half space under a constant flux, K: 2 q sqrt(t / (pi k rho c)). @source Holman, ch. 4 */
export function surfaceFlashK(fluxWpm2: number, durationS: number, effusivity2: number): number {
  return 2 * fluxWpm2 * Math.sqrt(durationS / (Math.PI * effusivity2));
}

/** Highest surface flash under a flux that falls linearly to zero in `durationS`, reached at half that time, K. */
export function fallingFluxPeakK(
  startFluxWpm2: number,
  durationS: number,
  effusivity2: number,
): number {
  return (2 / 3) * startFluxWpm2 * Math.sqrt((2 * durationS) / (Math.PI * effusivity2));
}
