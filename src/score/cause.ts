import { type CauseFit, causeFits } from './cause-fits.ts';
import type { ReleaseData } from './release-model.ts';
import type { Cause, CauseKind } from './rep-score.ts';
import { RELEASE_FULL_LEVEL } from './score-version.ts';

/** About two seconds of release at 3 Hz carry so many independent values. */
const INDEPENDENT_VALUES = 12;
/** Errors below half of what earns full marks are not worth another parameter. */
const FLOOR_SQUARE: number = 0.25 * RELEASE_FULL_LEVEL ** 2;
/** A model has to take away 60 % of the root mean square error to name a cause: this share of the squared one. */
const LEAST_EXPLAINED: number = 1 - (1 - 0.6) ** 2;

/**
 * Names what was different about a release by parsimony: of the eight subsets of timing, rate and amount the one
 * with the least Bayesian information criterion (Schwarz, Annals of Statistics 6, 1978). Where it leaves more than 40 %
 * of the error, the shape was different. With several parameters, the one without which the fit loses most gives the
 * name.
 */
export function findCause(data: ReleaseData): Cause {
  const fits = causeFits(data);
  const untouched = fits.find((fit) => parameters(fit) === 0)!;
  const chosen = fits.reduce((a, b) => (criterion(b) < criterion(a) ? b : a));
  const explained = untouched.meanSquare > 0 ? 1 - chosen.meanSquare / untouched.meanSquare : 0;
  if (explained < LEAST_EXPLAINED) return { ...SHAPE, explained };
  const { timingS, timeRatio: rateRatio, amountRatio } = chosen;
  return { kind: leadingKind(chosen, fits), timingS, rateRatio, amountRatio, explained };
}

const SHAPE = { kind: 'shape', timingS: 0, rateRatio: 1, amountRatio: 1 } as const;

function criterion(fit: CauseFit): number {
  const square = Math.max(fit.meanSquare, FLOOR_SQUARE);
  return INDEPENDENT_VALUES * Math.log(square) + parameters(fit) * Math.log(INDEPENDENT_VALUES);
}

function parameters({ free }: CauseFit): number {
  return Number(free.timing) + Number(free.rate) + Number(free.amount);
}

function leadingKind(chosen: CauseFit, fits: readonly CauseFit[]): CauseKind {
  const kinds = (['timing', 'rate', 'amount'] as const).filter((kind) => chosen.free[kind]);
  const cost = kinds.map((kind) => without(chosen, kind, fits).meanSquare);
  return kinds[cost.indexOf(Math.max(...cost))] ?? 'shape';
}

function without(
  chosen: CauseFit,
  kind: 'timing' | 'rate' | 'amount',
  fits: readonly CauseFit[],
): CauseFit {
  const free = { ...chosen.free, [kind]: false };
  return fits.find(
    (fit) =>
      fit.free.timing === free.timing &&
      fit.free.rate === free.rate &&
      fit.free.amount === free.amount,
  )!;
}
