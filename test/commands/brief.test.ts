import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { brief } from '../../src/commands/brief.ts';
import type { OptionValue } from '../../src/commands/command.ts';
import { CAUTIONS } from '../../src/drill/cautions.ts';
import { openHistory } from '../../src/history/open-history.ts';
import { Problem } from '../../src/problem.ts';
import { addAll, aNote, aRep, EVENING_MS } from '../history/fixtures.ts';
import { inFolder } from '../history/implementations.ts';
import { fakeContext } from './fake-context.ts';
import { runCommand } from './run-command.ts';

const NOW = { utcMs: EVENING_MS + 86_400_000, zone: 'Europe/Berlin', offsetMin: 60 };

async function page(
  folder: string,
  values: Record<string, OptionValue> = {},
  corners: readonly string[] = ['kiln-hairpin'],
): Promise<string> {
  const context = fakeContext(folder);
  await brief({ positionals: corners, values: { car: 'prototype', ...values } }, context, NOW);
  return context.printed();
}

async function refusal(work: Promise<unknown>): Promise<Problem> {
  const error = await work.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  return error instanceof Problem ? error : expect.unreachable('it was taken');
}

describe('brief', () => {
  test('says the numbers that the target of car and corner has', () =>
    inFolder(async (folder) => {
      const derive = ['target', 'derive', '--car', 'prototype', '--corner', 'kiln-hairpin'];
      const { key_points: keys } = JSON.parse((await runCommand([...derive, '--json'])).stdout);
      const { corners } = JSON.parse(await page(folder, { json: true }));
      expect(corners[0].peak_pedal_force_n).toBeCloseTo(keys.peak.pedal_force_n, 5);
      expect(corners[0].slowest_speed_mps).toBeCloseTo(keys.slowest.speed_mps, 5);
      expect(corners[0].apex_level).toBeCloseTo(keys.apex.level, 5);
      const zoneM = keys.brake_point.distance_m - keys.turn_in.distance_m;
      expect(-corners[0].brake_point_m).toBeCloseTo(zoneM, 5);
      const text = await page(folder);
      expect(text).toContain(`brake point       ${zoneM.toFixed(1)} m before turn-in`);
      expect(text).toContain('Made on 2026-11-26.');
      expect(text).toMatch(/gears +qualifying: gear 5 to 2/);
      expect(text).toMatch(/\n +race: gear 5 to 3/);
      expect(text).toMatch(/^consistency +no reps yet in this car and variant$/m);
      expect(text).toContain('A training aid, not a driving instruction');
    }));

  test('does not say of a corner that was practised otherwise that it was not practised', () =>
    inFolder(async (folder) => {
      const history = openHistory(folder);
      addAll(history, [
        aRep({ car: 'gt' }),
        aRep({ variant: 'race' }),
        aRep({ car: null, variant: null }),
      ]);
      history.close();
      const text = await page(folder);
      expect(text).toMatch(/^consistency +no reps yet in this car and variant$/m);
      expect(text).not.toContain('practised');
    }));

  test('takes reps of just this car and variant without late calls, and the notes of the corner', () =>
    inFolder(async (folder) => {
      const history = openHistory(folder);
      addAll(history, [
        aRep({ feedback: 'hidden' }),
        aRep({ feedback: 'hidden', car: 'gt' }),
        aRep({ feedback: 'hidden', variant: 'race' }),
        aRep({ feedback: 'hidden', corner: 'coil-bend' }),
      ]);
      for (const text of ['one', 'two', 'three', '<four>']) history.addNote(aNote({ text }));
      history.addNote(aNote({ text: '' }));
      history.addNote(aNote({ text: 'elsewhere', corner: 'coil-bend' }));
      history.close();
      const { corners } = JSON.parse(await page(folder, { json: true }));
      expect(corners[0].consistency[0]).toMatch(/^hidden reps: 1 of 8/);
      expect(corners[0].notes).toEqual([
        '<four> (qualifying, gear 2)',
        'three (qualifying, gear 2)',
        'two (qualifying, gear 2)',
        'and 1 older: ebbline note list kiln-hairpin',
      ]);
      expect(await page(folder, { format: 'html' })).toContain('<dd>&lt;four&gt; (qualifying');
      expect(await page(folder, { format: 'markdown' })).toContain('  - \\<four\\> (qualifying');
      await expect(page(folder, { driver: 'Bo' })).rejects.toThrow('nothing of driver "Bo"');
    }));

  test('takes another variant for the numbers and leaves nothing behind', () =>
    inFolder(async (folder) => {
      expect(await page(folder, { variant: 'race' })).toContain('(hairpin, race, from 245 km/h)');
      expect(existsSync(join(folder, 'history.sqlite'))).toBe(false);
    }));

  test('writes a file, but never over one', () =>
    inFolder(async (folder) => {
      const out = join(folder, 'brief.html');
      expect(await page(folder, { format: 'html', out })).toBe('');
      expect(readFileSync(out, 'utf8')).toContain('<h2>Kiln hairpin ');
      writeFileSync(out, 'mine');
      expect((await refusal(page(folder, { out }))).message).toMatch(/there already/);
      expect(readFileSync(out, 'utf8')).toBe('mine');
    }));

  test('of an event: its zones with their cars, in the session that follows the out-lap', () =>
    inFolder(async (folder) => {
      const none = { car: undefined };
      const text = await page(folder, none, ['sallow-fen']);
      expect(text).toMatch(
        /^Brief: Sallow Fen test day\n2027-04-10, in 135 days; qualifying, Quillmark P\. Made on 2026-11-26\./,
      );
      const json = JSON.parse(await page(folder, { ...none, json: true }, ['sallow-fen']));
      expect(json).toMatchObject({ event: 'sallow-fen', date: '2027-04-10', days_left: 135 });
      expect(json.cautions).toEqual(CAUTIONS);
      const { corners } = json;
      expect(corners.map(({ corner }: { corner: string }) => corner)).toEqual([
        ...['kiln-hairpin', 'coil-bend', 'heron-sweep', 'weavers-corner'],
        ...['drovers-bowl', 'ferry-chicane', 'beacon-rise', 'lantern-gate'],
      ]);
      expect(corners[0]).toMatchObject({ car: 'prototype', variant: 'qualifying' });
      const race = await page(folder, { car: 'gt', variant: 'race', json: true }, ['sallow-fen']);
      expect(JSON.parse(race).corners[7]).toMatchObject({ car: 'gt', variant: 'race' });
    }));

  test('of an event in a file; more than eight corners go on another page', () =>
    inFolder(async (folder) => {
      const file = new URL('../../profiles/events/sallow-fen-race.yaml', import.meta.url).pathname;
      const html = await page(folder, { car: undefined, format: 'html' }, [file]);
      const pages = html.split('<main>').slice(1);
      expect(pages.map((one) => one.split('<article>').length - 1)).toEqual([8, 5]);
    }));

  test('names the nearest of events and corners', () =>
    inFolder(async (folder) => {
      const refused = await refusal(page(folder, { car: undefined }, ['sallow-fan']));
      expect(refused.message).toBe('there is no event or corner "sallow-fan"');
      expect(refused.next).toMatch(/^Did you mean sallow-fen\?/);
    }));

  test('refuses what makes no page', () =>
    inFolder(async (folder) => {
      expect((await refusal(page(folder, {}, []))).exitCode).toBe(2);
      const nine = Array.from({ length: 9 }, () => 'kiln-hairpin');
      expect((await refusal(page(folder, {}, nine))).message).toMatch(/9 corners do not fit/);
      expect((await refusal(page(folder, { format: 'toString' }))).next).toMatch(/markdown/);
      expect((await refusal(page(folder, { variant: 'snow' }))).message).toMatch(/no variant/);
      expect((await refusal(page(folder, { car: undefined }))).message).toBe('no car named');
    }));
});
