import { type FitSignals, placeAt } from './fit-signals.ts';

/** Gears through a zone as logged. */
interface FitGears {
  readonly approach: number;
  readonly slowest: number;
  /** Where each lower gear is first logged, on the zone's places, in driving order. */
  readonly shiftsM: readonly number[];
}

/** A gear is believed that stays for so long: in between loggers show neutral or a gear on the way. */
const STAYS_S = 0.06;

/** @returns null where the log has no gear */
export function fitGears(signals: FitSignals): FitGears | null {
  const { gear, timeS, placeM, onsetS, slowestS } = signals;
  if (gear === null) return null;
  const runs = runsOf(timeS, gear);
  const at = (momentS: number): number | null =>
    (runs.findLast(({ fromS }) => fromS <= momentS) ?? runs[0])?.gear ?? null;
  const [approach, slowest] = [at(onsetS), at(slowestS)];
  if (approach === null || slowest === null || slowest > approach) return null;
  const shiftsM = runs.flatMap((run, i) => {
    const before = runs[i - 1];
    if (before === undefined || run.fromS <= onsetS || run.fromS > slowestS) return [];
    const down = Math.max(0, before.gear - run.gear);
    return new Array<number>(down).fill(placeAt(timeS, placeM, run.fromS));
  });
  return { approach, slowest, shiftsM };
}

interface Run {
  readonly gear: number;
  readonly fromS: number;
}

/** Gears from 1 to 12 that stay; what is shorter belongs to the one before. */
function runsOf(timeS: Float64Array, gear: Float64Array): Run[] {
  const runs: Run[] = [];
  let fromS = timeS[0]!;
  for (let i = 0; i < gear.length; i++) {
    const value = Math.round(gear[i]!);
    if (i > 0 && value !== Math.round(gear[i - 1]!)) fromS = timeS[i]!;
    const staysS = timeS[i]! - fromS;
    const isFirst = runs.length === 0;
    if (value < 1 || value > 12 || (staysS < STAYS_S && !isFirst)) continue;
    if (runs.at(-1)?.gear !== value) runs.push({ gear: value, fromS });
  }
  return runs;
}
