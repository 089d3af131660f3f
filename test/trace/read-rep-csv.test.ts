import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeProblem, Problem } from '../../src/problem.ts';
import { readRepCsv } from '../../src/trace/read-rep-csv.ts';

function refusal(text: string): string {
  try {
    readRepCsv(text, 'rep.csv');
  } catch (error) {
    if (error instanceof Problem) return describeProblem(error);
    throw error;
  }
  throw new Error('not refused');
}

describe('readRepCsv', () => {
  test('reads time and level', () => {
    const record = readRepCsv('time_s,level\n-0.2,0\n0,0.5\n0.1,.75\n');
    expect([...record.brake.timeS]).toEqual([-0.2, 0, 0.1]);
    expect([...record.brake.value]).toEqual([0, 0.5, 0.75]);
    expect(record).toMatchObject({ throttle: null, clutch: null, steering: null, endS: 0.1 });
  });

  test('takes comments, blank lines, other line ends, a byte order mark and any order', () => {
    const text = '\uFEFF# one rep\r\n\r\nlevel , time_s\r\n  # rest\r\n0,0\r\n1e-1, 0.01\r\n';
    const { brake } = readRepCsv(text);
    expect([...brake.timeS]).toEqual([0, 0.01]);
    expect([...brake.value]).toEqual([0, 0.1]);
  });

  test('reads the other channels and holds what is left empty', () => {
    const text =
      'time_s,level,throttle,clutch,steering_deg\n0,0,1,,-12.5\n0.1,0.2,,,\n0.2,0.4,0,,90\n';
    const { throttle, clutch, steering, endS } = readRepCsv(text);
    expect([...throttle!.timeS]).toEqual([0, 0.2]);
    expect([...throttle!.value]).toEqual([1, 0]);
    expect(clutch!.timeS.length).toBe(0);
    expect([...steering!.value]).toEqual([-12.5, 90]);
    expect(endS).toBe(0.2);
  });

  test('two samples at one time are allowed', () => {
    expect(readRepCsv('time_s,level\n0,0\n0,1\n').brake.timeS.length).toBe(2);
  });

  test('what is written is read back', () => {
    const levels = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(levels, { minLength: 1, maxLength: 50 }), (values) => {
        const rows = values.map((value, i) => `${i / 1000},${value}`);
        const { brake } = readRepCsv(`time_s,level\n${rows.join('\n')}`);
        expect([...brake.value]).toEqual(values.map((value) => value + 0));
      }),
    );
  });

  test('any text is read or refused with a place', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.boolean(), (text, headed) => {
        try {
          readRepCsv(headed ? `time_s,level\n${text}` : text, 'rep.csv');
        } catch (error) {
          expect(error).toBeInstanceOf(Problem);
          expect((error as Problem).where).toMatch(/^rep\.csv/);
        }
      }),
    );
  });
});

describe('readRepCsv refuses', () => {
  test.each([
    ['nothing', '', /^rep\.csv:1:1: there are no samples/],
    ['a header alone', '# x\ntime_s,level\n', /^rep\.csv:3:1: there are no samples/],
    ['no header', '0,0.5\n', /"0" is no column/],
    ['a missing column', 'time_s,throttle\n0,0\n', /^rep\.csv:1:1: the column level is missing/],
    ['an unknown column', 'time_s,level,gear\n', /^rep\.csv:1:14: "gear" is no column/],
    ['a column twice', 'time_s,level,level\n', /^rep\.csv:1:14: the column level comes twice/],
    ['semicolons', 'time_s;level\n0;0\n', /separate by commas/],
    [
      'a short row',
      'time_s,level\n0,0\n0.1\n',
      /^rep\.csv:3:1: this row has 1 cells, the header 2/,
    ],
    ['a long row', 'time_s,level\n0,0,5\n', /^rep\.csv:2:3: this row has 3 cells, the header 2/],
    ['a word', 'time_s,level\n0, full\n', /^rep\.csv:2:4: "full" is no number/],
    ['an infinite number', 'time_s,level\n0,1e999\n', /^rep\.csv:2:3: "1e999" is no number/],
    ['NaN', 'time_s,level\nNaN,0\n', /^rep\.csv:2:1: "NaN" is no number/],
    ['an empty level', 'time_s,level\n0,\n', /^rep\.csv:2:3: level is empty/],
    [
      'time running back',
      'time_s,level\n0.2,0\n0.1,0\n',
      /^rep\.csv:3:1: time_s 0.1 comes after 0.2/,
    ],
    ['a negative level', 'time_s,level\n0,-0.1\n', /^rep\.csv:2:3: level -0.1 is outside 0 to 1/],
    [
      'a throttle above 1',
      'time_s,level,throttle\n0,0,1.2\n',
      /^rep\.csv:2:5: throttle 1.2 is out/,
    ],
  ])('%s', (_, text, expected) => {
    expect(refusal(text)).toMatch(expected);
  });

  test('percent, with the remedy', () => {
    expect(refusal('time_s,level\n0,80\n')).toMatch(/looks like percent: divide the column by 100/);
    expect(refusal('time_s,level\n0,1.1\n')).not.toMatch(/percent/);
  });

  test('several mistakes at once', () => {
    const text = refusal('time_s,level\n0,x\n0.1,2\n0.05,0\n');
    expect(text).toMatch(/3 problems/);
    expect(text).toMatch(/rep\.csv:2:3/);
    expect(text).toMatch(/rep\.csv:3:5/);
    expect(text).toMatch(/rep\.csv:4:1/);
  });

  test('but lists no more than twenty', () => {
    const rows = Array.from({ length: 500 }, (_, i) => `${i},80`);
    expect(refusal(`time_s,level\n${rows.join('\n')}`)).toMatch(/20 problems/);
  });
});
