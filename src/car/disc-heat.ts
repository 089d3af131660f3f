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
