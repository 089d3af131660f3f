import { SIGNAL_WORDS, type TurnedLine } from './turned-line.ts';
import type { Figures } from './zone-fit.ts';

/** A single bend with a logger's noise leaves half of this; two apexes or a tightening line leave more. */
const POOR_SHARE = 0.06;
/** Two signals that differ by more contradict each other. */
const CONTRADICTION = 0.15;

/** What reads badly in a fitted zone, in words. */
export function zoneCautions(lines: readonly TurnedLine[], figures: Figures): string[] {
  return [...lineCautions(lines, figures), ...brakeCautions(figures)];
}

function lineCautions(lines: readonly TurnedLine[], { radiusM }: Figures): string[] {
  const [first] = lines;
  if (first === undefined) return [];
  const cautions: string[] = [];
  if (first.line.missShare > POOR_SHARE)
    cautions.push(
      `one bend leaves ${Math.round(100 * first.line.missShare)} % of the turning over: two apexes, a changing radius, a slide, or noise`,
    );
  if (first.line.turnsBack)
    cautions.push('the car also turns the other way: a chicane needs its second turn by hand');
  for (const { signal, line } of lines.slice(1)) {
    if (!signal.isCurvature || radiusM === undefined) continue;
    const otherM = Math.abs(1 / line.curvature);
    if (Math.abs(otherM - radiusM.value) <= CONTRADICTION * radiusM.value) continue;
    cautions.push(`${SIGNAL_WORDS[signal.kind]} says a radius of ${otherM.toFixed(0)} m`);
  }
  return cautions;
}

/** Turn-in found so near to the brake point is where the data begin. */
const AT_BRAKE_SHARE = 0.9;

function brakeCautions({ turnInM, brakePointM }: Figures): string[] {
  if (turnInM === undefined || turnInM.value < AT_BRAKE_SHARE * brakePointM!.value) return [];
  return ['the car turns as soon as it brakes, or sooner: turn-in and entry are uncertain'];
}
