import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { progress } from '../../src/commands/progress.ts';
import { zonedInstant } from '../../src/consistency/zoned-instant.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { NewRep, PracticeStart } from '../../src/history/store.ts';
import { Problem } from '../../src/problem.ts';
import { aPractice, aRep, aScore, EVENING_MS } from '../history/fixtures.ts';
import { inFolder } from '../history/implementations.ts';
import { fakeContext } from './fake-context.ts';

const NOW = zonedInstant(EVENING_MS, 'Europe/Berlin'); // Wednesday, 2026-W48
const DAY_MS = 86_400_000;

interface Asked {
  readonly positionals?: readonly string[];
  readonly values?: Readonly<Record<string, string | boolean>>;
}

function printed(folder: string, { positionals = [], values = {} }: Asked = {}): string {
  const context = fakeContext(folder);
  expect(progress({ positionals, values }, context, NOW)).toBe(0);
  return context.printed();
}

/** Writes one practice with its reps, so many days ago. */
function practise(
  folder: string,
  daysAgo: number,
  reps: readonly Partial<NewRep>[],
  changes: Partial<PracticeStart> = {},
): void {
  const history = openHistory(folder);
  const at = zonedInstant(EVENING_MS - daysAgo * DAY_MS, 'Europe/Berlin');
  const practice = history.startPractice(aPractice({ startedAt: at, ...changes }));
  for (const rep of reps) history.addRep(practice, aRep({ at, ...rep }));
  history.close();
}

test('without a history there is one friendly line, and no file is made', () =>
  inFolder((folder) => {
    const nowhere = join(folder, 'none');
    expect(printed(nowhere)).toBe('No reps yet: drive some with `ebbline drill`.\n');
    expect(printed(nowhere, { values: { json: true } })).toBe('{"targets":[]}\n');
    expect(existsSync(nowhere)).toBe(false);
    practise(folder, 0, []);
    expect(printed(folder)).toBe('No reps yet: drive some with `ebbline drill`.\n');
  }));

test('a target, a driver, the last weeks', () =>
  inFolder((folder) => {
    practise(folder, 0, [{}, { targetId: 'sweeper' }]);
    practise(folder, 2, [{}]); // Monday of this week
    practise(folder, 3, [{}]); // Sunday of the week before
    practise(folder, 30, [{}], { driver: 'Lou' });
    const rows = (asked: Asked): string[] => {
      const { targets } = JSON.parse(
        printed(folder, { ...asked, values: { ...asked.values, json: true } }),
      );
      return targets.map(
        (target: { target_id: string; driver: string; days: { day: string }[] }) =>
          `${target.driver} ${target.target_id} ${target.days.map(({ day }) => day.slice(5)).join()}`,
      );
    };
    expect(rows({})).toEqual([
      'Lou hairpin 10-26',
      'Kim hairpin 11-22,11-23,11-25',
      'Kim sweeper 11-25',
    ]);
    expect(rows({ positionals: ['sweeper'] })).toEqual(['Kim sweeper 11-25']);
    expect(rows({ values: { driver: 'Lou' } })).toEqual(['Lou hairpin 10-26']);
    expect(rows({ positionals: ['hairpin'], values: { weeks: '1' } })).toEqual([
      'Kim hairpin 11-23,11-25',
    ]);
    expect(rows({ positionals: ['hairpin'], values: { weeks: '2' } })).toEqual([
      'Kim hairpin 11-22,11-23,11-25',
    ]);
    expect(printed(folder, { values: { driver: 'Lou', weeks: '2' } })).toBe(
      'No reps in the last 2 weeks.\n',
    );
  }));

test('numbers in JSON carry their units', () =>
  inFolder((folder) => {
    practise(folder, 0, [
      ...Array.from({ length: 10 }, (_, i) => ({
        outcome: aScore({ averageErrorLevel: i % 2 === 0 ? 0.03 : -0.01 }),
        feedback: i === 0 ? ('first-of-day' as const) : ('shown' as const),
      })),
      { voided: 'aborted' as const, outcome: null },
    ]);
    const [target] = JSON.parse(printed(folder, { values: { json: true } })).targets;
    expect(target).toMatchObject({ driver: 'Kim', target_id: 'hairpin' });
    expect(target.sentence).toMatch(/^Not known yet whether the spread changed/);
    expect(target.days).toEqual([
      {
        day: '2026-11-25',
        iso_week: '2026-W48',
        zone: 'Europe/Berlin',
        target_version: 'v-one',
        score_version: 1,
        source: 'hid',
        sensor: 'force',
        calibration_id: 'c0ffee',
        foot: 'left',
        footwear: 'race boots',
        condition: 'dry',
        changed: [],
        reps: 10,
        shown_reps: 9,
        hidden_reps: 0,
        first_of_day_reps: 1,
        warm_up_reps: 0,
        aborted_reps: 1,
        device_lost_reps: 0,
        scored_reps: 10,
        measured_reps: 10,
        median_score: 71.25,
        median_release_error_level: 0.041,
        average_error_level: expect.closeTo(0.01, 12),
        average_error_spread_level: expect.closeTo(0.0210818510677892, 12),
        start_of_release_spread_s: 0,
        reapplications_per_rep: 2,
      },
    ]);
  }));

test('a change of conditions is named in JSON as in the table', () =>
  inFolder((folder) => {
    practise(folder, 1, [{}]);
    practise(folder, 0, [{ targetVersion: 'v-two' }], { calibrationId: 'bead' });
    const [target] = JSON.parse(printed(folder, { values: { json: true } })).targets;
    expect(target.days[1].changed).toEqual(['target_version', 'calibration_id']);
    expect(printed(folder)).toContain('target version v-one -> v-two, calibration c0ffee -> bead');
  }));

test('slips of the keyboard are problems that name what there is', () =>
  inFolder((folder) => {
    practise(folder, 0, [{}, { targetId: 'sweeper' }]);
    const failure = (asked: Asked): Problem => {
      try {
        printed(folder, asked);
      } catch (error) {
        expect(error).toBeInstanceOf(Problem);
        return error as Problem;
      }
      return expect.unreachable();
    };
    const target = failure({ positionals: ['hairpim'] });
    expect([target.exitCode, target.next]).toEqual([
      1,
      'Did you mean hairpin? There are reps of: hairpin, sweeper.',
    ]);
    expect(failure({ values: { driver: 'Kin' } }).next).toMatch(/^Did you mean Kim/);
    expect(failure({ positionals: ['a', 'b'] }).exitCode).toBe(2);
    for (const weeks of ['0', '-1', '1.5', 'two', ''])
      expect(failure({ values: { weeks } }).exitCode).toBe(2);
  }));

test('nothing that draws, reads devices or streams is loaded', () => {
  const seen = new Set<string>();
  const packages = new Set<string>();
  const visit = (file: string): void => {
    if (seen.has(file)) return;
    seen.add(file);
    const text = readFileSync(file, 'utf8');
    for (const [, kind, name = ''] of text.matchAll(
      /^(import|export)\s(?!type\b)[^;]*?from '([^']+)'/gms,
    ))
      if (name.startsWith('.')) visit(resolve(dirname(file), name));
      else if (kind !== undefined && !name.startsWith('node:')) packages.add(name);
  };
  visit(new URL('../../src/commands/progress.ts', import.meta.url).pathname);
  expect(seen.size).toBeGreaterThan(20);
  expect([...packages]).toEqual([]);
});
