import { foldLines } from '../setup/fold-lines.ts';
import type { Verdict } from './verdict.ts';

/** What is to be mended comes first. */
const ORDER: readonly Verdict['verdict'][] = ['bad', 'limited', 'unknown', 'good'];
const WIDTH = 80;

/** Verdicts as the table `rig check` prints, the worst first: what was found, and below it what to do. */
export function verdictLines(verdicts: readonly Verdict[]): string[] {
  const sorted = ORDER.flatMap((order) => verdicts.filter(({ verdict }) => verdict === order));
  const width = (texts: readonly string[]): number => Math.max(0, ...texts.map((t) => t.length));
  const nameWidth = width(sorted.map(nameOf));
  const checkWidth = width(sorted.map(({ check }) => check));
  const indent = ' '.repeat('limited  '.length);
  return sorted.flatMap((one) => [
    `${one.verdict.padEnd(7)}  ${nameOf(one).padEnd(nameWidth)}  ${one.check.padEnd(checkWidth)}  ${one.found}`,
    ...(one.fix === null ? [] : foldLines(`${indent}${one.fix}`, WIDTH).split('\n')),
  ]);
}

function nameOf({ device, role }: Verdict): string {
  return role ?? device;
}
