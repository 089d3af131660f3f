/** Switch times tried, in grid points. */
const SWITCH_STEP = 5;

/**
 * The best root mean square difference an on/off foot could reach on this stretch of a target: one constant level
 * (the mean up to the switch) and then nothing, over all switch times 5 ms apart. It is what doing it crudely costs,
 * against which the release is judged (a skill score against a trivial reference: Murphy, Monthly Weather Review 116,
 * 1988).
 */
export function onOffError(levels: Float64Array): number {
  const energy = levels.reduce((sum, level) => sum + level * level, 0);
  let best = energy;
  let sum = 0;
  for (let i = 0; i < levels.length; i++) {
    sum += levels[i]!;
    if (i % SWITCH_STEP === 0) best = Math.min(best, energy - (sum * sum) / (i + 1));
  }
  return Math.sqrt(Math.max(0, best) / levels.length);
}
