import { speedText, type TextUnits } from '../../unit-text.ts';
import { SHIFT_POINTS, speedFault } from '../describe-live.ts';
import type { RepOutcome } from '../rep-score.ts';
import { type SharedSpeed, sharedSpeed, speedSide } from '../slowest-speed.ts';
import type { FoundTrouble } from './found-trouble.ts';

/** A corner that most reps entered too fast or too slow. @param least from which share of the target's speed on */
export function speedTrouble(
  outcomes: readonly RepOutcome[],
  units: TextUnits,
  least?: number,
): FoundTrouble | null {
  const shared = sharedSpeed(outcomes, least);
  return shared && toldOf(shared, units);
}

function toldOf({ errorMps, reps, of }: SharedSpeed, units: TextUnits): FoundTrouble {
  const other = speedSide(errorMps) === 'fast' ? 'slower' : 'faster';
  return {
    part: 'slowest speed',
    fault: speedFault({ slowestSpeedErrorMps: errorMps }, units),
    change: `be ${speedText(Math.abs(errorMps), units)} ${other} at the slowest point`,
    lost: SHIFT_POINTS * reps,
    reps,
    of,
  };
}
