import { copyFileSync, existsSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { progress } from '../../src/commands/progress.ts';
import { findTarget } from '../../src/commands/target-files.ts';
import { zonedInstant } from '../../src/consistency/zoned-instant.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { NewRep, PracticeStart } from '../../src/history/store.ts';
import { liveStart } from '../../src/live/live-start.ts';
import { Problem } from '../../src/problem.ts';
import { scoreLiveRep } from '../../src/score/score-live-rep.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { overTime } from '../../src/target/over-time.ts';
import type { Target } from '../../src/target/target.ts';
import type { Track } from '../../src/trace/track.ts';
import { aPractice, aRep, aScore, EVENING_MS, RECORD } from '../history/fixtures.ts';
import { inFolder } from '../history/implementations.ts';
import { bundledZone } from '../live-car/bundled-zone.ts';
import { pointsOver, recordOf } from '../live-car/rigs.ts';
import { fakeContext } from './fake-context.ts';

const TODAY = '2026-11-25'; // Wednesday, 2026-W48
const DAY_MS = 86_400_000;

interface Asked {
  readonly positionals?: readonly string[];
  readonly values?: Readonly<Record<string, string | boolean | readonly string[]>>;
}

async function printed(
  folder: string,
  { positionals = [], values = {} }: Asked = {},
): Promise<string> {
  const context = fakeContext(folder);
  expect(await progress({ positionals, values }, context, TODAY)).toBe(0);
  return context.printed();
}

/** A foot that does what the target says. */
function sampledLevel(target: Target): Track {
  const timeS = Float64Array.from({ length: 5000 }, (_, i) => i / 1000);
  return { timeS, value: timeS.map((t) => target.level.at(t)) };
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
  inFolder(async (folder) => {
    const nowhere = join(folder, 'none');
    expect(await printed(nowhere)).toBe('No reps yet: drive some with `ebbline drill`.\n');
    expect(await printed(nowhere, { values: { json: true } })).toBe('{"targets":[]}\n');
    expect(existsSync(nowhere)).toBe(false);
    practise(folder, 0, []);
    expect(await printed(folder)).toBe('No reps yet: drive some with `ebbline drill`.\n');
  }));

test('a target, a driver, the last weeks', () =>
  inFolder(async (folder) => {
    practise(folder, 0, [{}, { targetId: 'sweeper' }]);
    practise(folder, 2, [{}]); // Monday of this week
    practise(folder, 3, [{}]); // Sunday of the week before
    practise(folder, 30, [{}], { driver: 'Lou' });
    const rows = async (asked: Asked): Promise<string[]> => {
      const { targets } = JSON.parse(
        await printed(folder, { ...asked, values: { ...asked.values, json: true } }),
      );
      return targets.map(
        (target: { target_id: string; driver: string; days: { day: string }[] }) =>
          `${target.driver} ${target.target_id} ${target.days.map(({ day }) => day.slice(5)).join()}`,
      );
    };
    expect(await rows({})).toEqual([
      'Lou hairpin 10-26',
      'Kim hairpin 11-22,11-23,11-25',
      'Kim sweeper 11-25',
    ]);
    expect(await rows({ positionals: ['sweeper'] })).toEqual(['Kim sweeper 11-25']);
    expect(await rows({ values: { driver: 'Lou' } })).toEqual(['Lou hairpin 10-26']);
    expect(await rows({ positionals: ['hairpin'], values: { weeks: '1' } })).toEqual([
      'Kim hairpin 11-23,11-25',
    ]);
    expect(await rows({ positionals: ['hairpin'], values: { weeks: '2' } })).toEqual([
      'Kim hairpin 11-22,11-23,11-25',
    ]);
    expect(await printed(folder, { values: { driver: 'Lou', weeks: '2' } })).toBe(
      'No reps in the last 2 weeks.\n',
    );
  }));

test('numbers in JSON carry their units', () =>
  inFolder(async (folder) => {
    practise(folder, 0, [
      ...Array.from({ length: 10 }, (_, i) => ({
        outcome: aScore({ averageErrorLevel: i % 2 === 0 ? 0.03 : -0.01 }),
        feedback: i === 0 ? ('first-of-day' as const) : ('shown' as const),
      })),
      { voided: 'aborted' as const, outcome: null },
    ]);
    const [target] = JSON.parse(await printed(folder, { values: { json: true } })).targets;
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

test('a spread curve needs ten hidden reps, and the target that they were driven against', () =>
  inFolder(async (folder) => {
    const hidden = (count: number): readonly Partial<NewRep>[] =>
      Array.from({ length: count }, () => ({ feedback: 'hidden' as const }));
    practise(folder, 1, hidden(9));
    expect(await printed(folder)).toContain('no practice with 10 hidden reps yet');
    practise(folder, 0, hidden(10));
    expect(await printed(folder)).toMatch(
      /Spread along the target: target hairpin has been changed since/,
    );
  }));

test('the spread curve is that of the last practice since the break, shown reps left out', () =>
  inFolder(async (folder) => {
    const target = overTime(await findTarget('hairpin', folder));
    const rep = (feedback: 'shown' | 'hidden', factor: number): Partial<NewRep> => {
      const timeS = Float64Array.from({ length: 5000 }, (_, i) => i / 1000);
      const record = {
        ...RECORD,
        brake: { timeS, value: timeS.map((t) => factor * target.level.at(t)) },
        endS: 5,
      };
      return { feedback, targetVersion: target.version, record, outcome: scoreRep(record, target) };
    };
    const hidden = Array.from({ length: 10 }, (_, i) => rep('hidden', i % 2 === 0 ? 0.9 : 1));
    practise(folder, 1, [...hidden, rep('hidden', 0.2)], { calibrationId: 'old' });
    practise(folder, 0, [...hidden, rep('shown', 0.3)]);
    const [told] = JSON.parse(await printed(folder, { values: { json: true } })).targets;
    expect(told.spread_curve).toMatchObject({ day: '2026-11-25', hidden_reps: 10 });
    // at the peak: ten values of 0.9 and 1.0 times the level have a deviation of 0.0527 times it
    const peak = target.level.at(target.marks.peak);
    const at = Math.round((target.marks.peak + 0.1 - target.marks.rise) / 0.005);
    expect(told.spread_curve.spread_level[at] / peak).toBeCloseTo(0.0527, 2);
    expect(await printed(folder)).toContain('10 hidden reps of 2026-11-25');
    practise(folder, 0, [rep('hidden', 1)], { footwear: 'socks' });
    expect(await printed(folder)).toContain('no practice with 10 hidden reps yet');
  }));

test('the spread curve of the live car lies over the road, from the samples driven again', () =>
  inFolder(async (folder) => {
    const zone = bundledZone('gt', 'lantern-gate', 'race');
    const { points, durationS, brakePointM } = zone.derived.zone;
    const level = pointsOver(points, (p) => p.level);
    const rep = (factor: number): Partial<NewRep> => {
      const record = recordOf({
        brake: (t) => (t < 0 ? 0 : factor * level(t)),
        endS: durationS + 0.6,
      });
      return {
        feedback: 'hidden',
        car: 'gt',
        corner: 'lantern-gate',
        variant: 'race',
        live: liveStart(zone),
        targetId: zone.target.id,
        targetVersion: zone.target.version,
        record,
        outcome: scoreLiveRep(record, zone),
      };
    };
    const [light, whole] = [rep(0.92), rep(1)];
    const reps = Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? light : whole));
    practise(folder, 0, reps);
    const [told] = JSON.parse(await printed(folder, { values: { json: true } })).targets;
    const { along_from_turn_in_m: alongM, spread_level: spread } = told.spread_curve;
    expect(told.spread_curve).toMatchObject({ day: '2026-11-25', hidden_reps: 10 });
    expect(alongM).toHaveLength(spread.length);
    expect(alongM[0]).toBeCloseTo(brakePointM, 0);
    expect(alongM.at(-1)).toBeGreaterThan(0);
    // Five values of 0.92 and five of 1.00 times the level: 0.08 / 2 * sqrt(10 / 9) = 0.0422 of it, as long as the two
    // cars are equally fast. The grip allows more than the target where they brake, so that each is as far below it.
    const peak = Math.round(0.5 / told.spread_curve.step_s);
    expect(spread[peak] / level(0.5)).toBeCloseTo(0.042, 2);
    expect(await printed(folder)).toMatch(/m before turn-in +\d+ m after turn-in\n/);
    const imperial = fakeContext(folder, { units: 'imperial' });
    await progress({ positionals: [], values: {} }, imperial, TODAY);
    expect(imperial.printed()).toMatch(/ft before turn-in +\d+ ft after turn-in\n/);
    practise(folder, 0, [
      { ...whole, targetVersion: 'v-old' },
      ...reps.map((one) => ({ ...one, targetVersion: 'v-old' })),
    ]);
    expect(await printed(folder)).toContain(
      'Spread along the target: car gt or corner lantern-gate has been changed since',
    );
  }));

test('a change of conditions is named in JSON as in the table', () =>
  inFolder(async (folder) => {
    practise(folder, 1, [{}]);
    practise(folder, 0, [{ targetVersion: 'v-two' }], { calibrationId: 'bead' });
    const [target] = JSON.parse(await printed(folder, { values: { json: true } })).targets;
    expect(target.days[1].changed).toEqual(['target_version', 'calibration_id']);
    expect(await printed(folder)).toContain(
      '-- does not compare: the target was changed, other pedals or calibration --',
    );
  }));

test('a target that was drilled by its path is asked for by path or id, and drawn once its file is named', () =>
  inFolder(async (folder) => {
    const path = join(folder, 'from-the-coach.yaml');
    copyFileSync('profiles/targets/hairpin.yaml', path);
    const target = overTime(await findTarget(path, folder));
    const record = { ...RECORD, brake: sampledLevel(target), endS: 5 };
    const targetVersion = target.version;
    const outcome = scoreRep(record, target);
    const rep = { targetId: 'from-the-coach', feedback: 'hidden', targetVersion, record, outcome };
    practise(
      folder,
      0,
      Array.from({ length: 10 }, () => rep as Partial<NewRep>),
    );
    const hint =
      /there is no target "from-the-coach" in the usual\s+folders: name its file with --target/;
    expect(await printed(folder)).toMatch(hint);
    expect(await printed(folder, { positionals: ['from-the-coach'] })).toMatch(hint);
    const drawn = /Spread along the target, .*10 hidden reps/;
    expect(await printed(folder, { positionals: [path] })).toMatch(drawn);
    expect(await printed(folder, { values: { target: [path] } })).toMatch(drawn);
    // where the file is gone its name still says what is meant, and the curve is known
    rmSync(path);
    expect(await printed(folder, { positionals: [path] })).toMatch(drawn);
    // until there is more to it
    practise(
      folder,
      0,
      Array.from({ length: 10 }, () => rep as Partial<NewRep>),
    );
    expect(await printed(folder, { positionals: [path] })).toMatch(hint);
  }));

test('a corner is asked for by its id', () =>
  inFolder(async (folder) => {
    practise(folder, 0, [{}, { targetId: 'gt/kiln-hairpin/wet', corner: 'kiln-hairpin' }]);
    const text = await printed(folder, { positionals: ['kiln-hairpin'] });
    expect(text).toContain('gt/kiln-hairpin/wet, ');
    expect(text).toContain(': 1 rep on 1 day');
  }));

test('slips of the keyboard are problems that name what there is', () =>
  inFolder(async (folder) => {
    practise(folder, 0, [{}, { targetId: 'sweeper' }]);
    const failure = async (asked: Asked): Promise<Problem> => {
      try {
        await printed(folder, asked);
      } catch (error) {
        expect(error).toBeInstanceOf(Problem);
        return error as Problem;
      }
      return expect.unreachable();
    };
    const target = await failure({ positionals: ['hairpim'] });
    expect([target.exitCode, target.next]).toEqual([
      1,
      'Did you mean hairpin? There are reps of: hairpin, sweeper.',
    ]);
    expect((await failure({ values: { driver: 'Kin' } })).next).toMatch(/^Did you mean Kim/);
    expect((await failure({ positionals: ['a', 'b'] })).exitCode).toBe(2);
    for (const weeks of ['0', '-1', '1.5', 'two', ''])
      expect((await failure({ values: { weeks } })).exitCode).toBe(2);
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

test('drivers are compared on the same target, and never taken together', () =>
  inFolder(async (folder) => {
    const hidden = (level: number): Partial<NewRep>[] =>
      Array.from({ length: 8 }, () => ({
        feedback: 'hidden',
        outcome: aScore({ releaseErrorLevel: level }),
      }));
    for (const [driver, levels] of [
      ['Kim', [0.04, 0.05, 0.08]],
      ['Bo', [0.2, 0.2, 0.2]],
    ] as const)
      for (const [i, level] of levels.entries()) practise(folder, 9 - i, hidden(level), { driver });
    const asked = { values: { all: true, json: true } };
    const { targets } = JSON.parse(await printed(folder, asked));
    expect(targets).toHaveLength(1);
    const [bo, kim] = targets[0].drivers;
    // differences 0.01 and 0.03: their deviation over the root of two
    expect([bo.driver, bo.typical_error_level]).toEqual(['Bo', 0]);
    expect([kim.driver, kim.hidden_rep_count]).toEqual(['Kim', 24]);
    expect(kim.typical_error_level).toBeCloseTo(0.01, 12);
    expect(kim.trend_missing_rep_count).toBeGreaterThan(0);
    expect(JSON.stringify(targets)).not.toContain('71.25');
    expect(await printed(folder, { values: { all: true } })).toMatch(/^hairpin, score 1\n/);
    const context = fakeContext(folder);
    const both = progress({ positionals: [], values: { all: true, driver: 'Bo' } }, context, TODAY);
    await expect(both).rejects.toMatchObject({ exitCode: 2 });
  }));
