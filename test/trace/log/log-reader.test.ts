import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvOf, type DrivenRow, drive, ZONE } from './driven-log.ts';
import { importBytes, importText, refusal } from './import-text.ts';
import '../../seed.ts';

const rows = drive();
const plain = csvOf(rows);
const lineOf = (timeS: number): number => Math.round(timeS * 100);
const whats = (text: string, wish = {}): string[] =>
  importText(text, wish).summary.notices.map(({ what }) => what);

/** The log with its own way of writing rows. */
function written(header: string, row: (row: DrivenRow, i: number) => string): string {
  return `${header}\n${rows.map(row).join('\n')}\n`;
}

describe('a plain log', () => {
  test('gives its zones where the brake goes on, by lap', () => {
    const { zones, summary } = importText(plain);
    expect(zones.map(({ number, lap }) => [number, lap])).toEqual([
      [1, 1],
      [2, 2],
      [3, 3],
    ]);
    zones.forEach(({ startS }, i) => {
      // 4 bar of a rise of 300 bar/s, on the next row
      expect(startS).toBeCloseTo(ZONE.firstS + i * ZONE.everyS + 0.02, 2);
    });
    expect(summary.notices).toEqual([]);
    expect(summary).toMatchObject({ rows: rows.length, brake: 'brake-front' });
    expect(summary.stepS).toBeCloseTo(0.01, 9);
  });

  test('keeps a second before and what the score needs after', () => {
    const { samples } = importText(plain).zones[1]!;
    const timeS = samples.get('time')!;
    expect(timeS[0]).toBeCloseTo(-1, 1);
    expect(timeS.at(-1)).toBeGreaterThan(2.48 + 1.25);
    const at = timeS.findIndex((time) => time > 0.5);
    expect(samples.get('brake-front')![at]).toBeCloseTo(60e5, 0);
  });

  test('is the same however its bytes are split', () => {
    const bytes = new TextEncoder().encode(plain.slice(0, plain.lastIndexOf('\n', 30_000)));
    const whole = importBytes([bytes]);
    fc.assert(
      fc.property(fc.array(fc.nat(bytes.length), { maxLength: 40 }), (cuts) => {
        const places = [0, ...cuts.sort((a, b) => a - b), bytes.length];
        const chunks = places.slice(1).map((to, i) => bytes.subarray(places[i]!, to));
        expect(importBytes(chunks)).toEqual(whole);
      }),
      { numRuns: 60 },
    );
  });

  test('is the same beyond the first 64 KiB, byte by byte and at once', () => {
    const bytes = new TextEncoder().encode(plain);
    expect(bytes.length).toBeGreaterThan(65_536);
    const whole = importBytes([bytes]);
    for (const size of [7, 4096, 65_536, 65_537]) {
      const chunks = Array.from({ length: Math.ceil(bytes.length / size) }, (_, i) =>
        bytes.subarray(i * size, (i + 1) * size),
      );
      expect(importBytes(chunks)).toEqual(whole);
    }
  });
});

describe('other ways to write', () => {
  const expected = importText(plain).zones.map(({ startS }) => startS);
  const starts = (text: string, wish = {}): number[] =>
    importText(text, wish).zones.map(({ startS }) => startS);

  test('semicolons with decimal commas', () => {
    expect(starts(plain.replaceAll(',', ';').replaceAll('.', ','))).toEqual(expected);
  });

  test('tabs, padding, a trailing separator, line ends of two characters, a byte order mark', () => {
    const text = written(
      'time_s\tbrake_front_bar \t speed_kmh\t',
      ({ timeS, bar, mps }) =>
        `  ${timeS.toFixed(3)} \t${bar.toFixed(2)}\t ${(mps * 3.6).toFixed(2)}\t`,
    );
    const odd = `\uFEFF${text.replaceAll('\n', '\r\n')}`;
    expect(starts(odd)).toEqual(expected);
    const [zone] = importText(odd).zones;
    expect(zone!.samples.get('speed')![0]).toBeCloseTo(60, 1);
    expect(whats(odd)).toContain('the separator at the end of the header is passed over');
  });

  test('a header that starts with # and one with numbers before the names', () => {
    const row = ({ timeS, bar, mps }: DrivenRow): string =>
      `${timeS.toFixed(3)},${bar.toFixed(2)},${mps.toFixed(3)}`;
    expect(starts(written('# time_s,brake_front_bar,speed_mps', row))).toEqual(expected);
    expect(starts(written('1 time (s),2 brake front (bar),3 speed (m/s)', row))).toEqual(expected);
  });

  test('a row of units below the header, and lines about the log before it', () => {
    const text = written(
      'made up\n\ntime,brake front,speed\ns,bar,m/s',
      ({ timeS, bar, mps }) => `${timeS.toFixed(3)},${bar.toFixed(2)},${mps.toFixed(3)}`,
    );
    expect(starts(text)).toEqual(expected);
    expect(whats(text)).toContain('lines before line 3 are passed over');
  });

  test('signals of the COVESA specification bring their unit', () => {
    const text = written(
      'time_s,Vehicle.Chassis.Brake.PedalPosition,Vehicle.Speed',
      ({ timeS, bar, mps }) =>
        `${timeS.toFixed(3)},${(bar / 0.8).toFixed(2)},${(mps * 3.6).toFixed(2)}`,
    );
    const { zones, summary } = importText(text);
    expect(zones.length).toBe(3);
    expect(summary.brake).toBe('brake-level');
    expect(Math.max(...zones[0]!.samples.get('brake-level')!)).toBeCloseTo(0.75, 5);
  });

  test('no time: a stated rate, or distance and speed', () => {
    const rate = written(
      'brake_front_bar,speed_mps',
      ({ bar, mps }) => `${bar.toFixed(2)},${mps.toFixed(3)}`,
    );
    expect(refusal(rate)).toContain('--rate-hz');
    starts(rate, { rateHz: 100 }).forEach((startS, i) => {
      expect(startS).toBeCloseTo(expected[i]!, 6);
    });
    const distance = written(
      'distance_m,brake_front_bar,speed_mps',
      ({ distanceM, bar, mps }) => `${distanceM.toFixed(4)},${bar.toFixed(2)},${mps.toFixed(3)}`,
    );
    starts(distance).forEach((startS, i) => {
      expect(startS).toBeCloseTo(expected[i]!, 1);
    });
    expect(whats(distance)).toContain('time is computed from distance and speed');
  });
});

describe('repaired with a notice', () => {
  const lines = plain.trimEnd().split('\n');
  const changed = (at: number, cells: (cells: string[]) => string[]): string =>
    lines.map((line, i) => (i === at ? cells(line.split(',')).join(',') : line)).join('\n');
  const brake = (value: string) => (cells: string[]) => cells.with(1, value);

  test('a spike of one sample', () => {
    const text = changed(1 + lineOf(5.6), brake('75'));
    const { zones, summary } = importText(text);
    expect(Math.max(...zones[0]!.samples.get('brake-front')!)).toBeCloseTo(60e5, 0);
    expect(summary.notices).toMatchObject([{ count: 1, line: 2 + lineOf(5.6) }]);
  });

  test('a start-up value that no brake has', () => {
    const text = changed(1, brake('325.5'));
    expect(importText(text).zones.length).toBe(3);
    expect(importText(text).summary.notices).toMatchObject([{ line: 2 }]);
    expect(whats(text)[0]).toContain('start-up');
  });

  test('an empty cell and one that says it is no number keep the value before', () => {
    for (const value of ['', 'NaN', 'n/a']) {
      const { zones, summary } = importText(changed(1 + lineOf(5.6), brake(value)));
      expect(Math.min(...zones[0]!.samples.get('brake-front')!.subarray(120, 190))).toBeCloseTo(
        60e5,
        0,
      );
      expect(summary.notices).toMatchObject([{ count: 1, line: 2 + lineOf(5.6) }]);
    }
  });

  test('a last row that is cut off', () => {
    expect(whats(`${plain}33.5,0`)).toEqual(['the last row is cut off and left out']);
  });

  test('missing rows become a gap of the zone', () => {
    const text = lines.toSpliced(1 + lineOf(6), 30).join('\n');
    const { zones, summary } = importText(text);
    expect(zones[0]!.gaps.length).toBe(1);
    const { fromS, toS } = zones[0]!.gaps[0]!;
    expect(toS - fromS).toBeCloseTo(0.31, 6);
    expect(summary.notices).toMatchObject([{ what: 'rows are missing', line: 2 + lineOf(6) }]);
  });

  test('a clock that starts again with each lap', () => {
    const text = written(
      'time_s,brake_front_bar,speed_mps,lap',
      ({ timeS, bar, mps, lap }) =>
        `${(timeS % 10).toFixed(3)},${bar.toFixed(2)},${mps.toFixed(3)},${lap}`,
    );
    const { zones, summary } = importText(text);
    expect(zones.map(({ lap }) => lap)).toEqual([1, 2, 3]);
    expect(zones[2]!.startS).toBeCloseTo(25.02, 2);
    expect(summary.notices).toMatchObject([{ count: 3, line: 1002 }]);
  });

  test('the brake on at a standstill is no zone', () => {
    const text = written(
      'time_s,brake_front_bar,speed_mps',
      ({ timeS, bar }) => `${timeS.toFixed(3)},${bar.toFixed(2)},0`,
    );
    expect(importText(text).zones).toEqual([]);
    expect(whats(text)).toEqual(['brake on without slowing: no zone']);
  });
});

describe('refused', () => {
  const lines = plain.trimEnd().split('\n');

  test('a word in a column that is read, with line and column', () => {
    const text = lines.with(700, lines[700]!.replace(/^[^,]*,[^,]*/, '6.99,off')).join('\n');
    expect(refusal(text)).toContain('701: "off" in brake_pressure_front is no number');
  });

  test('a row with too few or too many cells', () => {
    expect(refusal(lines.with(50, '0.49,0').join('\n'))).toContain(
      '51: this row has 2 cells, the header 5',
    );
    expect(refusal(lines.with(500, `${lines[500]},9`).join('\n'))).toContain(
      '501: this row has more cells',
    );
  });

  test('time that goes back', () => {
    const text = lines.with(900, lines[900]!.replace(/^[^,]*/, '5.5')).join('\n');
    expect(refusal(text)).toContain('901: time goes back from 8.98 to 5.5');
  });

  test('commas between columns and inside numbers', () => {
    expect(refusal('time_s,brake_front_bar\n0,1,0,0\n0,2,0,5\n')).toContain('decimal commas');
  });

  test('a unit that nobody says, until somebody does', () => {
    const text = plain.replace(' [bar]', '');
    expect(refusal(text)).toContain('--unit brake-front=UNIT');
    expect(importText(text, { units: new Map([['brake-front', 'bar']]) }).zones.length).toBe(3);
  });

  test('two columns of one name', () => {
    const text = plain.replace('ax [m/s^2]', 'speed [m/s]');
    expect(refusal(text)).toContain('2 columns may be speed: #3 speed, #5 speed');
    expect(importText(text, { columns: new Map([['speed', '#3']]) }).zones.length).toBe(3);
  });

  test('a brake that is on or off, one row a second, no brake at all', () => {
    const on = written(
      'time_s,brake (1)',
      ({ timeS, bar }) => `${timeS.toFixed(3)},${bar > 1 ? 1 : 0}`,
    );
    expect(refusal(on)).toContain('only has two values');
    const slow = `time_s,brake (%)\n${[0, 1, 2, 3].map((s) => `${s},${s}`).join('\n')}`;
    expect(refusal(slow)).toContain('one row every 1.00 s');
    expect(refusal('time_s,oil\n0,1\n1,2\n')).toContain('no column of the brake');
  });
});

describe('steering', () => {
  const turning = (sign: number, ay = 5): string =>
    written(
      'time_s,brake_front_bar,speed_mps,steering (deg),ay (m/s^2)',
      ({ timeS, bar, mps }) =>
        `${timeS.toFixed(3)},${bar.toFixed(2)},${mps.toFixed(2)},${sign * 40},${ay}`,
    );

  test('takes its sign from the turning of the car, with a notice', () => {
    expect(importText(turning(1)).summary.steeringPositive).toBe('left');
    expect(importText(turning(-1)).summary.steeringPositive).toBe('right');
    expect(whats(turning(-1))[0]).toContain('positive to the right');
  });

  test('is left out where nobody can tell, and refused where the car says otherwise', () => {
    expect(importText(turning(1, 0)).summary.steeringPositive).toBe(null);
    expect(importText(turning(1, 0), { steeringPositive: 'right' }).summary.steeringPositive).toBe(
      'right',
    );
    expect(refusal(turning(-1), { steeringPositive: 'left' })).toContain('positive to the left');
  });
});
