import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTmux } from '../terminal/tmux.ts';
import { type DrivenZone, eveningLog } from './evening-log.ts';
import { Browser } from './open-page.ts';

const MAIN = new URL('../../dist/bin/ebbline.js', import.meta.url).pathname;
const CARS = new URL('../../profiles/cars/', import.meta.url).pathname;

/** How the driver of the log bends the derived curve: later off the brake, and with more pedal. */
const DRIVE = { laps: 8, slower: 1.12, heavier: 1.05, seed: 11 };

let home = '';
const at = (...path: string[]): string => join(home, ...path);
const ebbline = (...args: string[]): string =>
  execFileSync(process.execPath, [MAIN, ...args, '--data-dir', at('data')], {
    cwd: home,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
  });
/** An answer is looked into by the names that its schema documents. */
// biome-ignore lint/suspicious/noExplicitAny: answers have many shapes
const json = (...args: string[]): any => JSON.parse(ebbline(...args, '--json'));

interface Curve {
  readonly time_s: readonly number[];
  readonly level: readonly number[];
}

/** Peak, and when a curve goes up through a fifth and down through a half of it, read off the sampled curve. */
function halfRelease({ time_s: times, level: levels }: Curve): {
  readonly peakLevel: number;
  readonly fifthS: number;
  readonly peakS: number;
  readonly halfS: number;
} {
  const peakLevel = Math.max(...levels);
  const peak = levels.indexOf(peakLevel);
  const fifth = levels.findIndex((level) => level > peakLevel / 5);
  const half = levels.findIndex((level, i) => i > peak && level < peakLevel / 2);
  return { peakLevel, fifthS: times[fifth]!, peakS: times[peak]!, halfS: times[half]! };
}

beforeAll(() => {
  home = mkdtempSync(join(tmpdir(), 'ebbline-evening-'));
  for (const folder of ['cars', 'targets', 'plans', 'events'])
    mkdirSync(at('data', folder), { recursive: true });
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

// Each step works on what the one before has left, as a coach does.
describe.sequential('an evening of a coach', () => {
  test('writes a corner sheet from five numbers and a car from one that is there', () => {
    ebbline(
      ...['corner', 'new', 'Tannery bend', '--approach-kmh', '205', '--slowest-kmh', '92'],
      ...['--zone-m', '125', '--turn-deg', '95', '--gear', '3'],
    );
    const car = readFileSync(`${CARS}gt.yaml`, 'utf8')
      .replace(/^name: .*$/m, 'name: Club GT')
      .replace('mass_kg: 1300', 'mass_kg: 1240');
    writeFileSync(at('data/cars/club-gt.yaml'), car);
    expect(ebbline('corner', 'check', at('data/corners/tannery-bend.yaml'))).toContain(': ok');
    expect(ebbline('car', 'check', at('data/cars/club-gt.yaml'))).toContain(': ok');
  });

  test('derives the target', () => {
    const derived = ebbline(
      ...['target', 'derive', '--car', 'club-gt', '--corner', 'tannery-bend'],
      ...['--out', at('data/targets/tannery.yaml')],
    );
    expect(derived).toMatch(/^brake point .*205 km\/h/m);
    expect(derived).toMatch(/^gear 4 to 3 /m);
  });

  test('moves a knot by hand, and every other line stays as it was', async () => {
    const file = at('data/targets/tannery.yaml');
    const before = readFileSync(file, 'utf8').split('\n');
    const terminal = await openTmux(
      [process.execPath, MAIN, 'target', 'edit', file, '--data-dir', at('data')],
      { cols: 100, rows: 32 },
    );
    try {
      await terminal.waitFor('grip by axle');
      await terminal.send('Tab', 'Tab', 'Tab', 'Tab');
      await terminal.waitFor('knot 2 of');
      await terminal.send('Down', 'Down');
      await terminal.waitFor('not saved');
      await terminal.send('s');
      await terminal.waitFor('Saved to');
      await terminal.send('q');
      expect(await terminal.exitCode()).toBe(0);
    } finally {
      await terminal.close();
    }
    const after = readFileSync(file, 'utf8').split('\n');
    const changed = after.flatMap((line, i) => (line === before[i] ? [] : [line.trim()]));
    expect(after).toHaveLength(before.length);
    expect(changed).toHaveLength(1);
    expect(changed[0]).toMatch(/^level: 0\.\d+$/);
    expect(ebbline('target', 'check', file)).toContain(': ok');
  });

  test('plans the practice, which the driver drills', () => {
    const plan = 'name: Tannery evening\nzones:\n  - target: tannery\nblocks:\n  - { reps: 10 }\n';
    writeFileSync(at('data/plans/evening.yaml'), plan);
    expect(ebbline('plan', 'check', at('data/plans/evening.yaml'))).toContain(': ok');
    const drilled = ebbline(
      ...['drill', '--plan', 'evening', '--source', 'virtual:club', '--headless', '--seed', '3'],
    );
    expect(drilled.match(/^Tannery bend, qualifying +rep /gm)).toHaveLength(14);
    expect(drilled).toContain('% too quick off the brake');
    expect(drilled).toContain('The plan is done.');
  });

  test('opens the review in a browser and picks a rep', async () => {
    ebbline('note', 'add', 'ease over the <drain>', '--corner', 'tannery-bend');
    ebbline('note', 'add', 'the <rear> was light', '--rep', '5');
    ebbline('report', 'last', '--out', at('review.html'));
    const browser = await Browser.start();
    try {
      const { page, complaints } = await browser.open(at('review.html'), { width: 390 });
      expect(await page.locator('h2').allTextContents()).toEqual(
        expect.arrayContaining([expect.stringContaining('Tannery bend')]),
      );
      expect(await page.locator('svg').count()).toBeGreaterThanOrEqual(4);
      const rep = page.getByLabel('rep 5').first();
      await rep.check();
      expect(await rep.isChecked()).toBe(true);
      // what a coach wrote stays what was written
      expect(await page.locator('body').textContent()).toContain('the <rear> was light');
      expect(complaints).toEqual([]);
    } finally {
      await browser.end();
    }
  });

  test('imports the log of the day before and finds its zones', () => {
    const zone: DrivenZone = json(
      ...['target', 'derive', '--car', 'club-gt', '--corner', 'tannery-bend'],
    );
    writeFileSync(at('friday.csv'), eveningLog(zone, DRIVE));
    ebbline(
      ...['trace', 'import', at('friday.csv')],
      ...['--column', 'speed=V ground', '--steering-positive', 'left'],
    );
    const { zones } = json('trace', 'zones', 'friday');
    expect(zones).toHaveLength(DRIVE.laps);
    const peak = Math.max(...zone.pressure_front_bar) * DRIVE.heavier;
    for (const found of zones) {
      expect(found.entry_speed_mps).toBeGreaterThan(0.98 * (205 / 3.6));
      expect(found.entry_speed_mps).toBeLessThan(1.02 * (205 / 3.6));
      expect(Math.abs(found.peak_pressure_bar / peak - 1)).toBeLessThan(0.05);
    }
  });

  test('learns a target from it that is as slow and as heavy as the drive was', () => {
    ebbline(
      ...['target', 'learn', '--trace', 'friday', '--zone', '1,2,3,4,5,6,7,8'],
      ...['--full-scale', '101', '--out', at('data/targets/driven.yaml')],
    );
    expect(ebbline('target', 'check', at('data/targets/driven.yaml'))).toContain(': ok');
    const derived: Curve = json(
      ...['target', 'derive', '--car', 'club-gt', '--corner', 'tannery-bend'],
    );
    const learned: Curve = json('target', 'show', 'driven');
    const [was, is] = [halfRelease(derived), halfRelease(learned)];
    expect(Math.abs(is.peakLevel / (DRIVE.heavier * was.peakLevel) - 1)).toBeLessThan(0.03);
    // From the hit, where both begin alike, to half of the peak; the driver was slow from the peak on only.
    const expectedS = was.peakS + DRIVE.slower * (was.halfS - was.peakS) - was.fifthS;
    expect(Math.abs(is.halfS - is.fifthS - expectedS)).toBeLessThan(0.04);
  });

  test('compares the car with the rig: the virtual driver comes off too soon', () => {
    const compared = ebbline(
      ...['trace', 'compare', 'friday', '--target', 'tannery', '--full-scale', '101'],
    );
    expect(compared).toMatch(/Did not carry over: .*50 to 10 %/s);
    expect(compared).toMatch(/^brake off +\+0\.\d\d s .*later$/m);
  });

  test('takes a brief to the circuit', () => {
    const event = [
      'name: Tannery test day',
      'date: 2099-05-02',
      'car: club-gt',
      'sessions:',
      '  - { session: qualifying, variant: qualifying }',
      'zones:',
      '  - { corner: tannery-bend, to_next_s: 9 }',
      '  - { corner: coil-bend, to_next_m: 430 }',
    ].join('\n');
    writeFileSync(at('data/events/day.yaml'), `${event}\n`);
    expect(ebbline('event', 'check', at('data/events/day.yaml'))).toContain(': ok');
    const laps = ebbline(
      ...['drill', '--event', 'day', '--laps', '2', '--source', 'virtual:club', '--headless'],
    );
    expect(laps).toContain('Tonight');
    const brief = ebbline('brief', 'day');
    expect(brief).toContain('== Tannery bend');
    expect(brief).toContain('ease over the <drain>');
    expect(brief).toContain('last downshift');
    expect(brief).toContain('A training aid, not a driving instruction');
  });
});
