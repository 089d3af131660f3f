import fc from 'fast-check';
import { expect, test } from 'vitest';
import { practiceDays } from '../../../src/consistency/practice-days.ts';
import type { RepMeasure } from '../../../src/consistency/rep-measure.ts';
import { weeksProgress } from '../../../src/consistency/weeks/weeks-progress.ts';
import { seededRandom } from '../../../src/drill/seeded-random.ts';
import { dayTable } from '../../../src/screens/progress/day-table.ts';
import { progressText } from '../../../src/screens/progress/progress-text.ts';
import { inventedWeeks } from '../../consistency/invented-weeks.ts';
import {
  aMeasure,
  aVoid,
  CONDITIONS,
  repsOf,
  someNumbers,
  times,
} from '../../consistency/rep-measures.ts';

const text = (reps: readonly RepMeasure[], mostRows = 26): string =>
  progressText(weeksProgress(repsOf(reps), { today: '2026-11-26', weeks: null }), mostRows);
const socks = { ...CONDITIONS, footwear: 'socks' };

test('the days are a table', () => {
  const reps = [
    ...times(7, (i) => aMeasure({ feedback: i % 2 === 0 ? 'shown' : 'hidden' })),
    aVoid('aborted'),
    ...times(10, (i) =>
      aMeasure({
        day: '2026-11-26',
        conditions: socks,
        numbers: someNumbers({
          averageErrorLevel: i % 2 === 0 ? 0.03 : -0.01,
          startOfReleaseErrorS: i % 2 === 0 ? 0.03 : -0.01,
        }),
      }),
    ),
  ];
  // spread: sqrt(10 * 0.02^2 / 9) = 0.0211
  expect(dayTable(practiceDays(repsOf(reps))).join('\n')).toBe(
    `                   shown/ median  median          spread  spread       re-
                  hidden/  score release average   of it  timing      app- abor-
day        reps     first 0..100 error % error %       %      ms of n lied   ted
2026-11-25    7     4/3/0 7 of 8  7 of 8  7 of 8 7 of 10 7 of 10    7  1.0     1
-- does not compare: footwear race boots -> socks ------------------------------
2026-11-26   10    10/0/0     70     4.0    +1.0     2.1      21   10  1.0     0`,
  );
});

test.each([
  [[9, 9, 9], true],
  [[99, 99, 99], true],
  [[104, 60, 12], true],
  [[1200, 340, 100], false],
])('a day of %j shown, hidden and first-of-day reps keeps to 80 columns', (counts, total) => {
  const kinds = ['shown', 'hidden', 'first-of-day'] as const;
  const reps = kinds.flatMap((feedback, i) => times(counts[i]!, () => aMeasure({ feedback })));
  const rows = dayTable(practiceDays(repsOf(reps)));
  for (const row of rows) expect(row.length).toBeLessThanOrEqual(80);
  expect(rows.at(-1)).toContain(` ${counts.join('/')} `);
  expect(rows[2]!.includes('reps')).toBe(total);
});

test('weeks that get better, with a gap and a change of pedal: read the file by eye', async () => {
  const reps = inventedWeeks(12, seededRandom(9), { factor: 0.3, missed: [5] }).map((rep) =>
    rep.day < '2026-09-21' ? { ...rep, conditions: { ...CONDITIONS, calibrationId: 'old' } } : rep,
  );
  await expect(text(reps, 8)).toMatchFileSnapshot('../golden/progress-weeks.txt');
});

test('other pedals and a changed target are told in words, with their day, and never as a hash', () => {
  const hashed = { targetVersion: '0484a4f5eac86a39', calibrationId: '908737af109cfe21' };
  const other = { targetVersion: '931a9a229cbc7db3', calibrationId: '28637b4c525403aa' };
  const days = ['2026-11-16', '2026-11-18'].flatMap((day, i) =>
    times(9, () =>
      aMeasure({
        day,
        practiceId: i + 1,
        feedback: 'hidden',
        conditions: { ...CONDITIONS, ...[hashed, other][i] },
      }),
    ),
  );
  const said = text(days);
  for (const hash of [...Object.values(hashed), ...Object.values(other)])
    expect(said).not.toContain(hash.slice(0, 8));
  expect(said).toContain(
    '-- does not compare from 2026-11-18 on: the target was changed, other ped',
  );
  expect(said).toMatch(
    /^-- does not compare: the target was changed, other pedals or calibration --/m,
  );
});

test('the first line is the sentence; with several targets each says first whose it is', () => {
  expect(text([aMeasure()])).toMatch(/^Not known yet whether the spread changed/);
  expect(text([aMeasure(), aMeasure({ targetId: 'sweeper' })])).toMatch(/^hairpin, Kim/);
});

test('says what was left out, where something was', () => {
  const all = text([aMeasure({ warmUp: true }), aVoid('device lost')]);
  expect(all).toMatch(/Warm-up reps are counted, but/);
  expect(all).toMatch(/because a device was lost: 1 rep\./);
});

test('nothing that a name holds reaches the terminal as a control, and no line is too wide', () => {
  const name = fc.string({ unit: 'binary', minLength: 1, maxLength: 60 });
  const rep = fc
    .record({
      driver: name,
      targetId: name,
      footwear: name,
      targetVersion: name,
      calibrationId: name,
    })
    .map(({ driver, targetId, ...changes }) =>
      aMeasure({ driver, targetId, conditions: { ...CONDITIONS, ...changes } }),
    );
  const twice = fc
    .tuple(rep, rep)
    .map(([a, b]) => [a, { ...b, driver: a.driver, targetId: a.targetId }]);
  fc.assert(
    fc.property(twice, (reps) => {
      for (const line of text(reps).split('\n')) {
        expect([...line].length).toBeLessThanOrEqual(80);
        expect(line).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
      }
    }),
  );
});

test('a long rest does not push what was driven off the page', () => {
  const reps = inventedWeeks(12, seededRandom(9), { factor: 0.3, missed: [] });
  const late = progressText(weeksProgress(repsOf(reps), { today: '2028-01-01', weeks: null }), 8);
  expect(late).toMatch(/^2026-W\d\d \|/m);
  expect(late).toMatch(/weeks without practice/);
});

test('a control chart without limits has a scale', () => {
  const practice = (practiceId: number, releaseErrorLevel: number): readonly RepMeasure[] =>
    times(8, () =>
      aMeasure({ practiceId, feedback: 'hidden', numbers: someNumbers({ releaseErrorLevel }) }),
    );
  const lines = text([...practice(1, 0.0731), ...practice(2, 0.0512)]).split('\n');
  for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  expect(lines).toContain('   7.3 o');
  expect(lines).toContain('   5.1   o');
});

test('few practices that fall are not called level', () => {
  const reps = [0.025, 0.018, 0.022, 0.015, 0.019, 0.014, 0.018].flatMap((level, i) =>
    times(9, () =>
      aMeasure({
        practiceId: i,
        feedback: 'hidden',
        numbers: someNumbers({ releaseErrorLevel: level }),
      }),
    ),
  );
  expect(text(reps)).toMatch(/7 practices do not tell a curve from a level line yet/);
  expect(text(reps)).not.toMatch(/no gain/);
});

test('reps of a varied target are counted, and no row is made of each', () => {
  const reps = times(12, (i) =>
    aMeasure({
      targetId: 'hairpin/varied',
      conditions: { ...CONDITIONS, targetVersion: `v-${i}` },
    }),
  );
  const said = text(reps);
  expect(said).toContain('hairpin/varied, Kim');
  expect(said).toContain('12 reps on 1 day\nVaried reps: each has a target of its own');
  expect(said).not.toContain('does not compare');
});

test('weeks of which nothing can be drawn have no axis', () => {
  const few = times(4, () => aMeasure({ feedback: 'hidden' }));
  expect(text(few)).toContain('By week: none has five hidden reps');
  expect(text(few)).not.toContain('Median release error by week');
  expect(text([...few, aMeasure({ feedback: 'hidden' })])).toContain(
    'Median release error by week',
  );
});
