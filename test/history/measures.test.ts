import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measuresOf } from '../../src/consistency/measure-columns.ts';
import type { RepMeasure } from '../../src/consistency/rep-measure.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { HistoryStore, RepQuery, StoredRep } from '../../src/history/store.ts';
import { inFolder, JOURNAL, SQL_IMPLEMENTATIONS } from './implementations.ts';
import { doWrites, QUERY, WRITES } from './writes.ts';

test.each([...SQL_IMPLEMENTATIONS, JOURNAL])(
  '$name: measures are those of the reps after any writes, whoever asked in between',
  ({ drivers }) => {
    fc.assert(
      fc.property(WRITES, QUERY, (writes, query) =>
        inFolder((folder) => {
          const history = openHistory(folder, { drivers });
          doWrites(history, writes, () => expectMeasuresOfReps(history, {}));
          expectMeasuresOfReps(history, query);
          expectMeasuresOfReps(history, {});
          history.close();
        }),
      ),
      { numRuns: 40 },
    );
  },
);

function expectMeasuresOfReps(history: HistoryStore, query: RepQuery): void {
  const expected = [...history.reps(query)].map(byHand);
  expect(history.measures(query)).toEqual(expected);
  expect(measuresOf(history.columns(query))).toEqual(expected);
}

/** What the statistics have to see of a rep. */
function byHand(rep: StoredRep): RepMeasure {
  const { source, sensor, calibrationId, foot, footwear, startedAt, driver, id } = rep.practice;
  const scoreVersion = rep.outcomes.at(-1)?.version ?? null;
  const { targetVersion, condition } = rep;
  return {
    repId: rep.id,
    driver,
    targetId: rep.targetId,
    practiceId: id,
    day: '2026-11-25',
    zone: startedAt.zone,
    conditions: {
      ...{ targetVersion, scoreVersion, source, sensor },
      ...{ calibrationId, foot, footwear, condition },
    },
    feedback: rep.feedback,
    warmUp: rep.phase === 'warm-up',
    selfRating: rep.selfRating,
    voided: rep.voided,
    numbers: numbersByHand(rep),
  };
}

function numbersByHand({ outcomes }: StoredRep): RepMeasure['numbers'] {
  const newest = outcomes.at(-1);
  if (newest === undefined) return null;
  const score = newest.kind === 'scored' ? newest : null;
  return {
    score: score?.score ?? 0,
    releaseErrorLevel: score?.releaseErrorLevel ?? null,
    averageErrorLevel: score?.averageErrorLevel ?? null,
    startOfReleaseErrorS: score?.keyPointErrorsS.startOfRelease ?? null,
    peakError: score?.peakError ?? null,
    reapplications: score?.reapplications ?? null,
  };
}
