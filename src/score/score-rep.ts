import type { Target } from '../target/target.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { alignRep } from './aligned-rep.ts';
import { measureRep, type RepMeasures } from './measure-rep.ts';
import { noRep } from './no-rep.ts';
import type { RepOutcome, RepScore } from './rep-score.ts';
import { repSignal } from './rep-signal.ts';
import { pointsLost, scoreOf, scoreParts } from './score-parts.ts';
import { LEAST_PEAK_SHARE, SCORE_VERSION } from './score-version.ts';
import { targetReference } from './target-reference.ts';

/**
 * Scores one finished rep against a target over time. A pure function of the record, so that a rep scores the same
 * live, replayed, read back from the history or from a CSV file, however its samples were chunked.
 *
 * @throws Problem for a target over distance or one that never rises, and for a record of more than ten minutes.
 */
export function scoreRep(record: RepRecord, target: Target): RepOutcome {
  const reference = targetReference(target);
  const rep = repSignal(record);
  if (rep === null) return noRep('too few samples', SCORE_VERSION, record, null);
  if (rep.onset === null) return noRep('never braked', SCORE_VERSION, record, rep);
  const aligned = alignRep(rep, rep.onset, reference);
  if (aligned.keys.peakLevel < LEAST_PEAK_SHARE * target.peakLevel) {
    return noRep('peak below a tenth of the target', SCORE_VERSION, record, rep);
  }
  return score(measureRep(record, { ...rep, onset: rep.onset }, aligned, reference));
}

function score(measures: RepMeasures): RepScore {
  const parts = scoreParts(measures);
  return {
    kind: 'scored',
    version: SCORE_VERSION,
    score: scoreOf(parts),
    parts,
    pointsLost: pointsLost(parts),
    ...measures,
    live: null,
  };
}
