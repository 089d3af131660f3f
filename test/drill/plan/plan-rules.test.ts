import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../src/drill/plan/check-plan.ts';
import type { KnownProfiles } from '../../../src/drill/plan/plan-names.ts';
import { planWarnings } from '../../../src/drill/plan/plan-warnings.ts';
import { Problem } from '../../../src/problem.ts';
import { readPlan } from '../../profile/read-sound.ts';
import { unmark } from '../../profile/unmark.ts';

const NAME = 'name: P';
const ONE = 'zones: [{ target: a }]';
const TWO = 'zones: [{ target: a }, { target: b }]';
const LIVE = 'zones: [{ corner: k, car: c }]';
const BLOCKS = 'blocks: [{ reps: 10 }]';

/** Each problem as `line:column what`. */
function problemsOf(text: string, known: KnownProfiles | null = null): string[] {
  const reading = checkPlan(text, 'a.yaml', known);
  if (reading.kind === 'read') return [];
  return reading.problems.map((p) => `${p.line}:${p.column} ${p.what}`);
}

const thinning = (...stages: string[]): string =>
  `feedback: { rule: thinning, stages: [${stages.join(', ')}] }`;

describe('values that do not fit each other', () => {
  test.each([
    [
      'a target and a corner',
      [NAME, 'zones: [¦{ target: a, corner: k, car: c }]', BLOCKS],
      'target and corner say the same',
    ],
    ['neither', [NAME, 'zones: [¦{ car: c }]', BLOCKS], 'zones[0] has no target'],
    ['a corner without a car', [NAME, 'zones: [¦{ corner: k }]', BLOCKS], 'the corner has no car'],
    [
      'a target with a car',
      [NAME, 'zones: [{ target: a, car: ¦c }]', BLOCKS],
      'a target has no car',
    ],
    [
      'a target with a variant',
      [NAME, 'zones: [{ target: a, variant: ¦v }]', BLOCKS],
      'a target has no variant',
    ],
    [
      'a live zone with another',
      [NAME, 'zones: [{ corner: k, car: c, live: ¦{ corner: k, car: c } }]', BLOCKS],
      'the zone has the live car already',
    ],
    [
      'a live car that nothing leads to',
      [NAME, 'zones: [{ target: a, live: ¦{ corner: k, car: c } }]', BLOCKS],
      'nothing promotes this zone to the live car',
    ],
    [
      'a zone twice',
      [NAME, 'zones: [{ target: a }, ¦{ target: a }]', BLOCKS],
      'the zone stands in the list twice',
    ],
    [
      'a carry-over check on a zone of the plan',
      [NAME, ONE, BLOCKS, 'carry_over: { zones: [¦{ target: a }] }'],
      'this zone is practised, not left',
    ],
    [
      'one zone shuffled',
      [NAME, ONE, 'blocks: [{ reps: 9, order: ¦shuffled }]'],
      'one zone cannot be shuffled',
    ],
    ['too few reps', [NAME, TWO, 'blocks: [{ reps: ¦1 }]'], '1 reps are not enough for 2 zones'],
    [
      'nothing to vary',
      [NAME, LIVE, 'blocks: [{ reps: 9, vary: ¦{ level_factor: [0.9, 1.1] } }]'],
      'no zone has a target to vary',
    ],
    ['an empty vary', [NAME, ONE, 'blocks: [{ reps: 9, vary: ¦{} }]'], 'vary says nothing'],
    [
      'a range the wrong way round',
      [NAME, ONE, 'blocks: [{ reps: 9, vary: { level_factor: ¦[1.1, 0.9] } }]'],
      '1.1 is above 0.9',
    ],
    [
      'a last stage that ends',
      [NAME, ONE, BLOCKS, thinning('{ until_rep: ¦5, shown_share: 1 }')],
      'nothing comes after the last stage',
    ],
    [
      'a stage that does not end',
      [NAME, ONE, BLOCKS, thinning('¦{ shown_share: 1 }', '{ shown_share: 0.5 }')],
      'only the last stage has no until_rep',
    ],
    [
      'stages out of order',
      [
        NAME,
        ONE,
        BLOCKS,
        thinning(
          '{ until_rep: 5, shown_share: 1 }',
          '{ until_rep: ¦5, shown_share: 1 }',
          '{ shown_share: 0.5 }',
        ),
      ],
      'the stage ends before it begins',
    ],
    [
      'feedback that grows',
      [NAME, ONE, BLOCKS, thinning('{ until_rep: 5, shown_share: 0.3 }', '{ shown_share: ¦0.5 }')],
      'more is shown than in the stage before',
    ],
    [
      'a tired leg compared with a fresh one',
      [NAME, ONE, BLOCKS, 'hard_reps: { most: ¦61 }'],
      '61 hard reps tire the leg',
    ],
    [
      'a promotion that cannot be earned',
      [NAME, ONE, BLOCKS, 'promote: { in_corridor_reps: ¦11 }'],
      '11 out of 10 hidden reps cannot be',
    ],
    [
      'another one',
      [NAME, ONE, BLOCKS, 'promote: { of_hidden_reps: ¦7 }'],
      '8 out of 7 hidden reps cannot be',
    ],
    [
      'a promotion from nothing',
      [NAME, LIVE, BLOCKS, 'promote: ¦{ in_corridor_reps: 5 }'],
      'promotion starts with a target, and no zone has one',
    ],
    ['a stint without a car', [NAME, ONE, BLOCKS, 'stint_gap_s: ¦40'], 'no zone has the live car'],
    [
      'late calls without a car',
      [NAME, ONE, BLOCKS, 'late_call_share: ¦0.2'],
      'no zone has the live car',
    ],
  ])('%s', (_name, lines, expected) => {
    const { text, place } = unmark(lines.join('\n'));
    expect(problemsOf(text)).toEqual([`${place} ${expected}`]);
  });

  test.each([
    [
      'a long stint that says so',
      [NAME, ONE, BLOCKS, 'condition: late stint', 'hard_reps: { most: 90 }'],
    ],
    [
      'a target with its live car',
      [
        NAME,
        'zones: [{ target: a, live: { corner: k, car: c } }]',
        BLOCKS,
        'promote: {}',
        'late_call_share: 0.1',
        'stint_gap_s: 30',
      ],
    ],
    [
      'two variants of a corner',
      [NAME, 'zones: [{ corner: k, car: c, variant: wet }, { corner: k, car: c }]', BLOCKS],
    ],
  ])('but %s is sound', (_name, lines) => {
    expect(problemsOf(lines.join('\n'))).toEqual([]);
  });
});

describe('names', () => {
  const known: KnownProfiles = {
    targets: ['hairpin'],
    cars: ['gt'],
    corners: new Map([['kiln', ['qualifying', 'wet']]]),
  };
  test.each([
    ['zones: [{ target: ¦harpin }]', 'there is no target "harpin"'],
    ['zones: [{ corner: ¦klin, car: gt }]', 'there is no corner "klin"'],
    ['zones: [{ corner: kiln, car: ¦gtt }]', 'there is no car "gtt"'],
    ['zones: [{ corner: kiln, car: gt, variant: ¦dry }]', 'there is no variant "dry"'],
    [
      'promote: {}\nzones: [{ target: hairpin, live: { corner: ¦klin, car: gt } }]',
      'there is no corner "klin"',
    ],
    [
      'zones: [{ target: hairpin }]\ncarry_over: { zones: [{ target: ¦sweper }] }',
      'there is no target "sweper"',
    ],
  ])('%j', (marked, expected) => {
    const { text, place } = unmark([NAME, BLOCKS, marked].join('\n'));
    expect(problemsOf(text, known)).toEqual([`${place} ${expected}`]);
    expect(problemsOf(text)).toEqual([]);
  });

  test('a path is left to whoever drives the plan', () => {
    expect(
      problemsOf([NAME, BLOCKS, 'zones: [{ target: here/a.yaml }]'].join('\n'), known),
    ).toEqual([]);
  });
});

test('the problem of a file lists them all', () => {
  const text = [NAME, ONE, 'blocks: [{ reps: 5, order: serial }]', 'stint_gap_s: 5'].join('\n');
  expect(() => readPlan(text, 'here/a.yaml')).toThrow(Problem);
  expect(() => readPlan(text, 'here/a.yaml')).toThrow(
    /^2 problems\n {2}here\/a.yaml:3:28: .*\n {2}here\/a.yaml:4:14: /,
  );
});

describe('a plan that says little', () => {
  const plan = readPlan([NAME, ONE, BLOCKS].join('\n'), 'plans/my-plan.yaml');

  test('gets the usual: five first-of-day reps, a short warm-up, blocked, sixty hard reps', () => {
    expect(plan).toEqual({
      id: 'my-plan',
      name: 'P',
      advice: null,
      zones: [{ kind: 'target', target: 'a', live: null }],
      firstOfDayReps: 5,
      warmUpReps: 4,
      blocks: [{ reps: 10, order: 'blocked', vary: null }],
      feedback: { kind: 'scheduled' },
      mostShownInARow: 3,
      hardReps: { fromLevel: 0.6, most: 60, fatigueLimit: 2.8 },
      condition: null,
      carryOver: null,
      promotion: null,
      restS: null,
      countdownS: null,
      stintGapS: null,
      lateCallShare: 0,
    });
  });
});

describe('what is allowed and hardly meant', () => {
  const warnings = (...lines: string[]) =>
    planWarnings(readPlan([NAME, ONE, ...lines].join('\n'), 'a.yaml'));

  test('feedback in most reps for good', () => {
    expect(warnings(BLOCKS, thinning('{ shown_share: 0.6 }'))).toEqual([
      expect.stringMatching(/^60 % of the reps stay shown for good/),
    ]);
    expect(
      warnings(BLOCKS, thinning('{ until_rep: 9, shown_share: 1 }', '{ shown_share: 0.5 }')),
    ).toEqual([]);
  });

  test('more reps than the cap lets through', () => {
    expect(warnings('blocks: [{ reps: 40 }, { reps: 21 }]')).toEqual([
      expect.stringMatching(/^The blocks have 61 reps/),
    ]);
    expect(warnings('blocks: [{ reps: 40 }, { reps: 20 }]')).toEqual([]);
  });
});

test('any file that fits the schema is a plan or a list of problems', () => {
  const zone = fc.oneof(
    fc.record({ target: fc.constantFrom('a', 'b', 'c') }),
    fc.record(
      { corner: fc.constantFrom('k', 'l'), car: fc.constant('c'), variant: fc.constant('wet') },
      { requiredKeys: ['corner'] },
    ),
  );
  const factor = fc.double({ min: 0.5, max: 1.5, noNaN: true });
  const file = fc.record(
    {
      name: fc.constant('P'),
      zones: fc.array(zone, { minLength: 1, maxLength: 8 }),
      blocks: fc.array(
        fc.record(
          {
            reps: fc.integer({ min: 1, max: 60 }),
            order: fc.constantFrom('blocked', 'serial', 'shuffled'),
            vary: fc.record({ level_factor: fc.tuple(factor, factor) }),
          },
          { requiredKeys: ['reps'] },
        ),
        { minLength: 1, maxLength: 12 },
      ),
      warm_up_reps: fc.integer({ min: 0, max: 10 }),
      late_call_share: fc.double({ min: 0, max: 1, noNaN: true }),
      promote: fc.record({ of_hidden_reps: fc.integer({ min: 1, max: 100 }) }),
    },
    { requiredKeys: ['name', 'zones', 'blocks'] },
  );
  fc.assert(
    fc.property(file, (value) => {
      const reading = checkPlan(JSON.stringify(value), 'a.yaml');
      if (reading.kind === 'refused') expect(reading.problems.length).toBeGreaterThan(0);
      else expect(reading.value.zones).toHaveLength(value.zones.length);
    }),
  );
});
