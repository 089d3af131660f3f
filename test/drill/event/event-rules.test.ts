import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkEvent } from '../../../src/drill/event/check-event.ts';
import { eventWarnings } from '../../../src/drill/event/event-warnings.ts';
import type { KnownProfiles } from '../../../src/drill/plan/plan-names.ts';
import { Problem } from '../../../src/problem.ts';
import { readEvent } from '../../profile/read-sound.ts';
import { unmark } from '../../profile/unmark.ts';

const NAME = 'name: E';
const DATE = 'date: 2027-04-10';
const CAR = 'car: c';
const TWO = 'zones: [{ corner: a, to_next_s: 9 }, { corner: b, to_next_m: 400 }]';
const SESSIONS = 'sessions: [{ session: race, variant: v }]';

/** Each problem as `line:column what`. */
function problemsOf(text: string, known: KnownProfiles | null = null): string[] {
  const reading = checkEvent(text, 'a.yaml', known);
  if (reading.kind === 'read') return [];
  return reading.problems.map((p) => `${p.line}:${p.column} ${p.what}`);
}

test('what is left out has its usual value', () => {
  expect(readEvent([NAME, DATE, CAR, TWO, SESSIONS].join('\n'), 'x/my-event.yaml')).toEqual({
    id: 'my-event',
    name: 'E',
    advice: null,
    date: '2027-04-10',
    zones: [
      { corner: 'a', car: 'c', variant: null, toNext: { kind: 'seconds', gapS: 9 } },
      { corner: 'b', car: 'c', variant: null, toNext: { kind: 'metres', gapM: 400 } },
    ],
    sessions: [{ session: 'race', variant: 'v', lateCallShare: 0 }],
    brakesStayHot: false,
  });
});

test("a session's share of late calls goes before the event's", () => {
  const sessions = 'sessions: [{ session: race }, { session: practice, late_call_share: 0 }]';
  const text = [NAME, DATE, CAR, TWO, sessions, 'late_call_share: 0.2'].join('\n');
  expect(readEvent(text, 'a.yaml').sessions.map((one) => one.lateCallShare)).toEqual([0.2, 0]);
});

describe('values that do not fit each other', () => {
  test.each([
    ['no such day', [NAME, 'date: ¦2027-02-29', CAR, TWO, SESSIONS], 'there is no day 2027-02-29'],
    [
      'no such month',
      [NAME, 'date: ¦2027-13-01', CAR, TWO, SESSIONS],
      'there is no day 2027-13-01',
    ],
    ['a date in other words', [NAME, 'date: ¦10.4.2027', CAR, TWO, SESSIONS], 'date is'],
    [
      'no car anywhere',
      [
        NAME,
        DATE,
        'zones: [{ corner: a, car: c, to_next_s: 9 }, ¦{ corner: b, to_next_s: 9 }]',
        SESSIONS,
      ],
      'the zone has no car',
    ],
    [
      'no gap',
      [NAME, DATE, CAR, 'zones: [{ corner: a, to_next_s: 9 }, ¦{ corner: b }]', SESSIONS],
      'zones[1] has no to_next_s',
    ],
    [
      'two gaps',
      [
        NAME,
        DATE,
        CAR,
        'zones: [¦{ corner: a, to_next_s: 9, to_next_m: 9 }, { corner: b, to_next_s: 9 }]',
        SESSIONS,
      ],
      'zones[0]',
    ],
    [
      'a corner twice',
      [
        NAME,
        DATE,
        CAR,
        'zones: [{ corner: a, to_next_s: 9 }, { corner: ¦a, variant: w, to_next_s: 9 }]',
        SESSIONS,
      ],
      'the corner comes twice in the lap',
    ],
    [
      'a session twice',
      [NAME, DATE, CAR, TWO, 'sessions: [{ session: race }, { session: ¦race }]'],
      'the session race stands in the list twice',
    ],
    [
      'an out-lap alone',
      [NAME, DATE, CAR, TWO, 'sessions: ¦[{ session: out-lap }]'],
      'there is nothing but an out-lap',
    ],
    [
      'one zone',
      [NAME, DATE, CAR, 'zones: ¦[{ corner: a, to_next_s: 9 }]', SESSIONS],
      'zones is a list',
    ],
    ['an unknown key', [NAME, DATE, CAR, TWO, SESSIONS, '¦lap: 3'], 'unknown key lap'],
  ])('%s', (_what, lines, expected) => {
    const { text, place } = unmark(lines.join('\n'));
    const problems = problemsOf(text);
    expect(problems.map((problem) => problem.slice(0, place.length))).toContain(place);
    expect(problems.join('\n')).toContain(expected);
  });
});

describe('names', () => {
  const KNOWN: KnownProfiles = {
    targets: [],
    cars: ['c'],
    corners: new Map([
      ['a', ['v', 'w']],
      ['b', ['v']],
    ]),
  };
  const text = (...lines: string[]) => [NAME, DATE, ...lines].join('\n');

  test('all known', () => {
    expect(problemsOf(text(CAR, TWO, SESSIONS), KNOWN)).toEqual([]);
  });

  test('a corner, cars and a variant that are not there', () => {
    const zones =
      'zones: [{ corner: aa, car: d, to_next_s: 9 }, { corner: b, variant: w, to_next_s: 9 }]';
    expect(problemsOf(text('car: e', zones, SESSIONS), KNOWN)).toEqual([
      '3:6 there is no car "e"',
      '4:19 there is no corner "aa"',
      '4:28 there is no car "d"',
      '4:69 there is no variant "w"',
    ]);
  });

  test("a session's variant that one sheet lacks, unless that zone has its own", () => {
    const sessions = 'sessions: [{ session: race, variant: w }]';
    expect(problemsOf(text(CAR, TWO, sessions), KNOWN)).toEqual([
      '5:38 there is no variant of b "w"',
    ]);
    const own = TWO.replace('corner: b', 'corner: b, variant: v');
    expect(problemsOf(text(CAR, own, sessions), KNOWN)).toEqual([]);
  });
});

test('a road that is shorter than the drill can drive is said', () => {
  const zones = 'zones: [{ corner: a, to_next_s: 6.3 }, { corner: b, to_next_s: 6.5 }]';
  const event = readEvent([NAME, DATE, CAR, zones, SESSIONS].join('\n'), 'a.yaml');
  expect(eventWarnings(event)).toEqual([
    'The drill needs 6.4 s from a slowest point to the next brake point; after a the road is shorter than that.',
  ]);
});

test('any text is an event or a list of problems, and never an exception', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 200 }), (text) => {
      const reading = checkEvent(text, 'a.yaml');
      return reading.kind === 'read' || reading.problems.length > 0;
    }),
  );
});

test('reading throws one Problem that lists all', () => {
  expect(() => readEvent('name: E', 'a.yaml')).toThrow(Problem);
});
