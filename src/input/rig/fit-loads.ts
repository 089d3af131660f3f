import { Problem } from '../../problem.ts';
import { lineFit } from './line-fit.ts';
import type { LoadFit } from './rig.ts';

/** A known load on the brake and the counts it gave. */
export type KnownLoad = LoadFit['loads'][number];

/**
 * Largest residual as a share of the largest load. The corridor is 5 % of the level, and a scale must be finer than
 * what it measures: half of that.
 */
const WORST_RESIDUAL = 0.025;

/**
 * Fits a force sensor to known loads: newtons over counts as a straight line. Two loads give the line, unchecked
 * (residual null); three or more are fitted by least squares with their residual.
 * @throws Problem for fewer than two different loads, loads that are not finite or below zero, loads that hardly
 * differ in counts or go against each other, and points that no line fits.
 */
export function fitLoads(loads: readonly KnownLoad[]): LoadFit {
  refuseImpossible(loads);
  refuseTurns(loads);
  const fit = lineFit(loads.map(({ newtons, counts }) => ({ x: counts, y: newtons })));
  if (fit === null) throw badLoads('all loads gave the same counts');
  const { slope, intercept, residual } = fit;
  refuseScatter(residual, Math.max(...loads.map(({ newtons }) => newtons)));
  return { newtonsPerCount: slope, zeroCounts: -intercept / slope, loads, residualN: residual };
}

function refuseImpossible(loads: readonly KnownLoad[]): void {
  const bad = loads.find(
    ({ newtons, counts }) => !(newtons >= 0 && newtons < Infinity && Number.isFinite(counts)),
  );
  if (bad !== undefined) throw badLoads(`${bad.newtons} N at ${bad.counts} counts is no load`);
  if (new Set(loads.map(({ newtons }) => newtons)).size < 2)
    throw badLoads('one load alone says nothing of the slope');
}

/** More load must move the counts on, always the same way. */
function refuseTurns(loads: readonly KnownLoad[]): void {
  const rising = [...loads].sort((a, b) => a.newtons - b.newtons);
  const way = Math.sign(rising.at(-1)!.counts - rising[0]!.counts);
  for (const [i, load] of rising.entries()) {
    const lighter = rising.slice(0, i).findLast(({ newtons }) => newtons < load.newtons);
    if (lighter === undefined || (load.counts - lighter.counts) * way > 0) continue;
    throw badLoads(
      `${newtonsText(load)} gave ${load.counts} counts, ${newtonsText(lighter)} gave ${lighter.counts}: more load must move the counts on`,
    );
  }
}

function refuseScatter(residualN: number | null, largestN: number): void {
  const limitN = WORST_RESIDUAL * largestN;
  if (residualN === null || residualN <= limitN) return;
  throw badLoads(
    `the loads lie ${residualN.toFixed(1)} N off a straight line, more than ${limitN.toFixed(1)} N (${100 * WORST_RESIDUAL} % of the largest): too coarse for a corridor of 5 %`,
  );
}

function newtonsText({ newtons }: KnownLoad): string {
  return `${newtons.toFixed(0)} N`;
}

function badLoads(what: string): Problem {
  return new Problem(what, {
    where: 'known loads',
    next: 'Put each load on the pedal at the same point, let it rest, and measure again.',
  });
}
