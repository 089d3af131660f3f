import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BlockDiagnosis,
  blockDiagnosis,
} from '../../../src/drill/diagnosis/block-diagnosis.ts';
import type { DiagnosedRep } from '../../../src/drill/diagnosis/diagnosed-rep.ts';
import { NEVER_BRAKED, RAMP } from '../drill-rig.ts';
import { type RampRep, rampRep } from './ramp-reps.ts';

const block = (...reps: readonly RampRep[]): DiagnosedRep[] =>
  reps.map((rep, i) => rampRep(rep, i + 1));
const diagnose = (...reps: readonly RampRep[]): BlockDiagnosis =>
  blockDiagnosis(block(...reps), RAMP);
const averages = ({ phases }: BlockDiagnosis) => phases.map((phase) => phase.averageErrorLevel);
const spreads = ({ phases }: BlockDiagnosis) => phases.map((phase) => phase.spreadLevel);
const near = (values: readonly number[], digits = 2) =>
  values.map((value) => expect.closeTo(value, digits));

/** The onset of a rep is found to a sample or two: 2 ms on a release of 80 % per second are 0.0016. */
const ONSET_DIGITS: number = -Math.log10(2 * 0.0016);

describe('average error per phase', () => {
  test('of a rep a tenth too light is a tenth of the mean level of each phase', () => {
    // means of the ramp: (0.04 + 0.24) / 0.4 s; 80 to 40 %; 40 to 8 %; 8 to 0 %
    expect(averages(diagnose({ gain: 0.9 }))).toEqual(
      near([-0.07, -0.06, -0.024, -0.004], ONSET_DIGITS),
    );
  });

  test('of a rep 100 ms late is the height of the fall in 100 ms, 8 % of full scale', () => {
    // of the first 100 ms only half of it: (0.1 * 0.04 + 0.4 * 0.08) / 0.5
    expect(averages(diagnose({ lateS: 0.1 }))).toEqual(near([0, 0.072, 0.08, 0.08], 2.5));
  });

  test('has its interval by Student from three reps on', () => {
    const two = diagnose({ gain: 0.9 }, { gain: 1 });
    expect(two.phases[1]).toMatchObject({ averageErrorInterval: null, spreadLevel: null });
    const three = diagnose({ gain: 0.9 }, { gain: 1 }, { gain: 1.1 });
    // means -0.06, 0, 0.06: 4.3027 (t of 2 degrees, 97.5 %) * 0.06 / root of 3
    expect(three.phases[1]?.averageErrorInterval?.high).toBeCloseTo(
      (4.3027 * 0.06) / Math.sqrt(3),
      2,
    );
    expect(three.phases[1]?.averageErrorInterval?.level).toBe(0.95);
  });
});

test('spread per phase is the root mean square of the standard deviation between reps', () => {
  // gains 0.9, 1, 1.1 have deviation 0.1: times the root mean square level of each phase
  const rms = (from: number, to: number) => Math.sqrt((from ** 3 - to ** 3) / (3 * (from - to)));
  const hit = Math.sqrt((0.1 * (0.64 / 3) + 0.3 * 0.64) / 0.4);
  expect(spreads(diagnose({ gain: 0.9 }, {}, { gain: 1.1 }))).toEqual(
    near([0.1 * hit, 0.1 * rms(0.8, 0.4), 0.1 * rms(0.4, 0.08), 0.1 * rms(0.08, 0)], ONSET_DIGITS),
  );
  expect(spreads(diagnose({}, {}, {}))).toEqual(near([0, 0, 0, 0], 9));
});

describe('the overlay', () => {
  test('has every measured rep, their mean and their spread at each place', () => {
    const { overlay } = blockDiagnosis(
      [
        ...block({ gain: 0.9 }, {}, { gain: 1.1 }),
        { ...rampRep({}, 4), outcome: null, curve: null, voided: 'aborted' },
      ],
      RAMP,
    );
    expect(overlay.reps).toHaveLength(3);
    const middle = Math.round(0.25 / overlay.grid.stepS);
    expect(overlay.mean?.[middle]).toBeCloseTo(0.8, 3);
    expect(overlay.spread?.[middle]).toBeCloseTo(0.08, 3);
  });

  test('does not move with the moment of the press', () => {
    const here = diagnose({ gain: 0.95 }, {}, { lateS: 0.05 });
    const later = diagnose(
      { gain: 0.95, pressedAtS: 0.31 },
      { pressedAtS: 0.4 },
      { lateS: 0.05, pressedAtS: 0.05 },
    );
    // one sample more or less on a rise of 8 per second
    for (const [i, level] of later.overlay.mean!.entries())
      expect(Math.abs(level - here.overlay.mean![i]!)).toBeLessThan(0.0081);
    expect(later.phases[2]?.spreadLevel).toBeCloseTo(here.phases[2]!.spreadLevel!, 2.5);
  });
});

describe('the cause', () => {
  test('is not named from two reps', () => {
    const { cause, phases } = diagnose({ releaseS: 0.75 }, { releaseS: 0.75 }, {});
    expect(cause).toBeNull();
    expect(phases.every((phase) => phase.cause === null)).toBe(true);
  });

  test('is named from three, with how sure that is', () => {
    const { cause } = diagnose({ releaseS: 0.75 }, { releaseS: 0.8 }, { releaseS: 0.75 }, {});
    // of 4 trials 3 hits: 0.1941 to 0.9937 (Clopper and Pearson)
    expect(cause).toMatchObject({ cause: { kind: 'rate' }, reps: 3, of: 4, verdict: 'likely' });
    expect(cause?.share.low).toBeCloseTo(0.1941, 4);
    expect(cause?.share.high).toBeCloseTo(0.9937, 4);
    expect(cause?.size?.low).toBeCloseTo(0.75, 2);
    expect(cause?.size?.high).toBeCloseTo(0.8, 2);
    // between the ends of three values lies the median of the population in all but 2 of 8 cases
    expect(cause?.size?.level).toBeCloseTo(0.75, 12);
  });

  test('is clear where no other can be as common', () => {
    const quick = Array.from({ length: 9 }, () => ({ releaseS: 0.75 }));
    expect(diagnose(...quick, {}).cause?.verdict).toBe('clear');
    expect(diagnose(...quick.slice(1), {}, {}).cause?.verdict).toBe('likely');
  });

  test.each<[string, RampRep, string, string, number]>([
    ['late', { lateS: 0.1 }, '50 to 10 %', 'timing', 0.1],
    ['early', { lateS: -0.1 }, '50 to 10 %', 'timing', -0.1],
    ['heavy', { gain: 1.15 }, '100 to 50 %', 'amount', 0.15],
    ['light', { gain: 0.85 }, '100 to 50 %', 'amount', -0.15],
    ['hard hit', { gain: 1.15 }, 'hit', 'amount', 0.15],
    ['slow hit', { riseS: 0.25 }, 'hit', 'rate', 0.135],
    // half of a release that takes 0.7 of the time ends 150 ms early
    ['quick', { releaseS: 0.7 }, '100 to 50 %', 'rate', -0.12],
    // 100 ms late where the phase begins, 180 ms where it ends: on average the 80 ms more count for half
    ['late and a little slow', { lateS: 0.08, releaseS: 1.2 }, '100 to 50 %', 'timing', 0.1],
  ])('per phase of three reps %s', (_, rep, phase, kind, size) => {
    const found = diagnose(rep, rep, rep).phases.find((each) => each.phase === phase);
    expect(found?.cause).toMatchObject({ kind, reps: 3, of: 3 });
    expect(found?.cause?.size).toBeCloseTo(size, 1.7);
  });

  test('within the corridor there is none', () => {
    const { phases } = diagnose({ gain: 1.01 }, { lateS: 0.01 }, { gain: 0.99 }, { lateS: 0.012 });
    expect(phases.map(({ cause }) => cause)).toEqual([null, null, null, null]);
  });
});

describe('aborted reps, shown and hidden ones, the first one', () => {
  const aborted = { ...rampRep({}, 9), outcome: null, curve: null, voided: 'aborted' } as const;
  const lost = { ...aborted, voided: 'device lost' } as const;

  test('the abort rate leaves out what was lost with a device', () => {
    const { aborts } = blockDiagnosis([...block({}, {}, {}), aborted, lost], RAMP);
    expect(aborts).toMatchObject({ aborted: 1, attempts: 4, share: 0.25 });
    // of 4 trials 1 hit
    expect(aborts.interval?.high).toBeCloseTo(0.8059, 4);
    expect(blockDiagnosis([], RAMP).aborts).toMatchObject({ share: null, interval: null });
  });

  test('hidden reps that are worse are told apart', () => {
    const shown = [1, 3, 5].map((place) => rampRep({ lateS: 0.01 * place }, place));
    const hidden = [2, 4, 6].map((place) =>
      rampRep({ lateS: 0.1 + 0.01 * place }, place, { feedback: 'hidden' }),
    );
    const { feedback } = blockDiagnosis([...shown, ...hidden], RAMP);
    expect(feedback.shown.reps).toBe(3);
    expect(feedback.hidden.medianScore!).toBeLessThan(feedback.shown.medianScore!);
    expect(feedback.difference?.shift).toBeGreaterThan(0.03);
    // of the 20 ways in which 3 of 6 can be hidden, 2 are as extreme
    expect(feedback.difference?.interval.level).toBeCloseTo(0.9, 12);
    expect(feedback.difference?.interval.low).toBeGreaterThan(0);
    expect(blockDiagnosis(shown, RAMP).feedback.difference).toBeNull();
  });

  test('the first rep against the others, and whether that is more than their spread', () => {
    const others = [{ lateS: 0.02 }, { lateS: 0.03 }, { lateS: 0.04 }, { lateS: 0.03 }];
    const { firstRep } = diagnose({ lateS: 0.15 }, ...others);
    expect(firstRep).toMatchObject({ others: 4, beyondSpread: true });
    expect(firstRep?.scorePoints).toBeGreaterThan(10);
    expect(firstRep?.releaseErrorLevel).toBeGreaterThan(0.05);
    expect(diagnose({ lateS: 0.035 }, ...others).firstRep?.beyondSpread).toBe(false);
    expect(diagnose({ lateS: 0.15 }, {}, {}).firstRep).toBeNull();
  });

  test('a first rep without braking loses all points and has no error', () => {
    const never = { ...rampRep({}, 1), outcome: NEVER_BRAKED, curve: null };
    const { firstRep } = blockDiagnosis(
      [never, rampRep({}, 2), rampRep({}, 3), rampRep({}, 4)],
      RAMP,
    );
    expect(firstRep).toMatchObject({ releaseErrorLevel: null, beyondSpread: null });
    expect(firstRep?.scorePoints).toBeCloseTo(100, 0);
  });
});

test('the order in which reps are given does not matter; driving a block twice keeps its averages', () => {
  const reps = block({ gain: 0.9 }, { lateS: 0.06 }, { releaseS: 0.8 }, { riseS: 0.2 }, {});
  const plain = blockDiagnosis(reps, RAMP);
  fc.assert(
    fc.property(fc.shuffledSubarray(reps, { minLength: reps.length }), (order) => {
      expect(blockDiagnosis(order, RAMP)).toEqual(plain);
    }),
    { numRuns: 10 },
  );
  const twice = blockDiagnosis([...reps, ...reps], RAMP);
  expect(averages(twice)).toEqual(near(averages(plain).map(Number), 12));
});
