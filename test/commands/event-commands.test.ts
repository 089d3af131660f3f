import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { eventList } from '../../src/commands/event-list.ts';
import { eventShow } from '../../src/commands/event-show.ts';
import { zonedInstant } from '../../src/consistency/zoned-instant.ts';
import { fakeContext } from './fake-context.ts';
import { runCommand } from './run-command.ts';

let dir = '';
const file = (name: string): string => join(dir, name);
const event = (...argv: string[]) => runCommand(['event', ...argv, '--data-dir', file('data')]);
/** Half past eleven in the evening of 31 March 2027 in Lisbon, where it is summer time. */
const NOW = zonedInstant(Date.UTC(2027, 2, 31, 22, 30), 'Europe/Lisbon');
const GOOD = `name: Mine
date: 2027-04-01
car: gt
sessions: [{ session: race, variant: race }]
zones: [{ corner: kiln-hairpin, to_next_s: 5 }, { corner: coil-bend, to_next_m: 300 }]
`;

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'event-commands-'));
  mkdirSync(file('data/events'), { recursive: true });
  writeFileSync(file('data/events/mine.yaml'), GOOD);
  writeFileSync(file('bad.yaml'), GOOD.replace('kiln-', 'kyln-').replace('race }', 'raze }'));
});
afterAll(() => rmSync(dir, { recursive: true }));

describe('event list', () => {
  test('own events first, with the days left by the local date, within 80 columns', async () => {
    const context = fakeContext(file('data'));
    await eventList({ positionals: [], values: {} }, context, NOW);
    const lines = context.printed().trimEnd().split('\n');
    expect(lines[1]).toMatch(/^mine +Mine +2027-04-01 +tomorrow +2 +own$/);
    expect(lines).toContainEqual(expect.stringMatching(/^sallow-fen .* in 10 days +8 +bundled$/));
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('as JSON', async () => {
    const { events } = JSON.parse((await event('list', '--json')).stdout) as {
      events: Record<string, unknown>[];
    };
    expect(events[0]).toMatchObject({
      id: 'mine',
      date: '2027-04-01',
      zones: [
        { corner: 'kiln-hairpin', car: 'gt', variant: null, to_next_s: 5 },
        { corner: 'coil-bend', car: 'gt', variant: null, to_next_m: 300 },
      ],
      origin: 'own',
    });
  });
});

describe('event show', () => {
  const show = async (name: string, values: Record<string, string | boolean> = {}) => {
    const context = fakeContext(file('data'));
    await eventShow({ positionals: [name], values }, context, NOW);
    return context.printed();
  };

  test('the lap of the session, within 80 columns', async () => {
    const text = await show('sallow-fen', { session: 'race' });
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(text).toContain('Sallow Fen test day: 2027-04-10, in 10 days\n');
    expect(text).toContain('race        race, a late call on 15 % of the reps\n');
    expect(text).toMatch(/^1 +Kiln hairpin +race +[\d.]+ m +\d+ km\/h +[\d.]+ s, 540 m$/m);
    expect(text).toMatch(/^3 +Heron sweep +race .* 7\.5 s$/m);
  });

  test('a road that is too short for the drill', async () => {
    expect(await show('mine')).toContain(
      'after Kiln\nhairpin, Coil bend the road is shorter than that.',
    );
  });

  test('JSON in SI, with a gap that follows from both speeds', async () => {
    const { days_left, lap } = JSON.parse(await show('mine', { json: true }));
    expect(days_left).toBe(1);
    expect(lap.session).toBe('race');
    const [kiln, coil] = lap.zones;
    expect(kiln).toMatchObject({ corner: 'kiln-hairpin', car: 'gt', variant: 'race', gap_s: 5 });
    // 300 m from coil-bend's slowest speed to the 245 km/h on the way to kiln-hairpin
    const [from, to] = [coil.slowest_speed_mps, 245 / 3.6];
    expect(coil.gap_s).toBeCloseTo((450 * (from + to)) / (from ** 2 + from * to + to ** 2), 9);
  });

  test('a session that is not there; no event named', async () => {
    const { code, stderr } = await event('show', 'mine', '--session', 'qualifying');
    expect(code).toBe(2);
    expect(stderr).toContain('Say one of: race.');
    expect((await event('show')).code).toBe(2);
    expect((await event('show', 'sallow-fan')).stderr).toContain('Did you mean sallow-fen?');
  });
});

describe('event check', () => {
  test('bundled events are sound, names and all', async () => {
    const folder = new URL('../../profiles/events/', import.meta.url).pathname;
    const names = ['sallow-fen.yaml', 'sallow-fen-race.yaml'].map((name) => join(folder, name));
    const { code, stderr } = await event('check', ...names);
    expect(stderr).toBe('');
    expect(code).toBe(0);
  });

  test('every problem with its place', async () => {
    const { code, stderr } = await event('check', file('bad.yaml'));
    expect(code).toBe(1);
    expect(stderr).toContain('bad.yaml:4:38: there is no variant of coil-bend "raze"\n');
    expect(stderr).toContain('bad.yaml:5:19: there is no corner "kyln-hairpin"\n');
    expect(stderr).toContain('Did you mean kiln-hairpin?');
  });
});
