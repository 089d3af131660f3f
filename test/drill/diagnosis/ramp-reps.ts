import { blockGrid } from '../../../src/drill/diagnosis/block-grid.ts';
import type { DiagnosedRep } from '../../../src/drill/diagnosis/diagnosed-rep.ts';
import { repCurve } from '../../../src/drill/diagnosis/rep-curve.ts';
import { scoreRep } from '../../../src/score/score-rep.ts';
import type { RepRecord } from '../../../src/trace/rep-record.ts';
import { brakeAlone } from '../../trace/brake-alone.ts';
import { RAMP } from '../drill-rig.ts';

/** How a rep differs from the ramp: 80 % in 0.1 s, held to 0.4 s, straight to 0 at 1.4 s. */
export interface RampRep {
  readonly gain?: number;
  readonly lateS?: number;
  readonly releaseS?: number;
  readonly riseS?: number;
  /** Added everywhere between 0.1 and 1.3 s. */
  readonly pressedAtS?: number;
}

export function rampLevel(rep: RampRep): (timeS: number) => number {
  const { gain = 1, lateS = 0, releaseS = 1, riseS = 0.1 } = rep;
  const startS = 0.4 + lateS;
  return (t) =>
    0.8 * gain * Math.max(0, Math.min(1, t / riseS, (startS + releaseS - t) / releaseS));
}

export function recordOf(level: (timeS: number) => number, delayS = 0): RepRecord {
  const timeS = Float64Array.from({ length: 3500 }, (_, i) => i / 1000 - 0.5);
  return brakeAlone(
    timeS,
    timeS.map((t) => level(t - delayS)),
    3,
  );
}

/** A scored rep of the ramp, from samples. */
export function rampRep(
  rep: RampRep,
  place: number,
  change: Partial<DiagnosedRep> = {},
): DiagnosedRep {
  const record = recordOf(rampLevel(rep), rep.pressedAtS ?? 0);
  const outcome = scoreRep(record, RAMP);
  if (outcome.kind !== 'scored') throw new Error('not a rep');
  const curve = repCurve(record.brake, outcome, blockGrid(RAMP));
  return { place, feedback: 'shown', voided: null, outcome, curve, ...change };
}
