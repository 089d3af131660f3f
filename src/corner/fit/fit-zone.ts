import { type DecelerationFit, fitByDeceleration } from './fit-by-deceleration.ts';
import { fitGears } from './fit-gears.ts';
import { fitLine } from './fit-line.ts';
import { type FitSignals, placeAt } from './fit-signals.ts';
import { brakingShare, turningShare } from './grip-share.ts';
import type { TurnedLine } from './turned-line.ts';
import { turningSignals } from './turning-signal.ts';
import { zoneCautions } from './zone-cautions.ts';
import type { FitWish, ZoneFacts } from './zone-facts.ts';
import { zoneFigures } from './zone-figures.ts';
import type { EntryFound, ZoneFit } from './zone-fit.ts';

/** A steering wheel does not get from straight to its place sooner (common practice, no source). */
const QUICKEST_ENTRY_S = 0.15;

/** What one logged braking zone says about its corner. */
export function fitZone(signals: FitSignals, wish: FitWish): ZoneFit {
  const { timeS, placeM, slowestS, slowestMps } = signals;
  const slowestM = placeAt(timeS, placeM, slowestS);
  const wishes = { slowestM, shortestM: QUICKEST_ENTRY_S * slowestMps };
  const lines = turningSignals(signals, wish.car).flatMap((signal) => {
    const line = fitLine(signal, placeM, wishes);
    return line === null ? [] : [{ signal, line }];
  });
  const slowing = fitByDeceleration(signals);
  const first = lines[0] ?? null;
  const share = brakingShare(signals, slowestM - turnInOf(first, slowing, slowestM), wish.car);
  const facts: ZoneFacts = { signals, wish, slowestM, first, slowing, share };
  const figures = zoneFigures(facts);
  const shape = figures.radiusM;
  return {
    number: signals.number,
    figures: { ...figures, ...(shape && turningShare(shape, slowestMps, wish.car)) },
    entry: entryOf(first, slowing),
    direction: directionOf(lines),
    shiftsM: fitGears(signals)?.shiftsM.map((sM) => slowestM - sM) ?? [],
    cautions: zoneCautions(lines, figures),
  };
}

function turnInOf(
  first: TurnedLine | null,
  slowing: DecelerationFit | null,
  slowestM: number,
): number {
  return first?.line.turnInM ?? slowestM - (slowing?.entryM ?? 0);
}

function entryOf(first: TurnedLine | null, slowing: DecelerationFit | null): EntryFound {
  if (first === null)
    return slowing === null
      ? { kind: 'smooth-apex', basis: 'assumed', rule: 'the zone is too short to see it' }
      : {
          kind: slowing.entry,
          basis: 'estimated',
          rule: 'fits the fall of deceleration better',
        };
  const { 'smooth-apex': smooth, clothoid } = first.line.missShares;
  const per = (share: number): string => `${(100 * share).toFixed(1)} %`;
  return {
    kind: first.line.entry,
    basis: 'estimated',
    rule: `left over: smooth-apex ${per(smooth)}, clothoid ${per(clothoid)} of the signal`,
  };
}

function directionOf(lines: readonly TurnedLine[]): 'left' | 'right' | null {
  const said = lines.find(({ signal }) => signal.isSigned);
  return said === undefined ? null : said.line.curvature > 0 ? 'left' : 'right';
}
