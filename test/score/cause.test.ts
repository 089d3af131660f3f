import { describe, expect, test } from 'vitest';
import { dominantCause } from '../../src/score/dominant-cause.ts';
import type { Cause, RepOutcome } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import {
  type BrakingShape,
  braking,
  type Curve,
  FALLS,
  record,
  SHAPE,
  shapeTarget,
} from './curves.ts';

describe.each(['convex', 'scurve', 'straight'] as const)('on a %s release', (family) => {
  const shape = { ...SHAPE, holdS: 0.35, fall: FALLS[family] };
  const target = shapeTarget(shape);
  const causeOf = (level: Curve): Cause | null => {
    const outcome = scoreRep(record(level, { toS: 3.2 }), target);
    return outcome.kind === 'scored' ? outcome.cause : null;
  };
  const changed = (change: Partial<BrakingShape>): Curve => braking({ ...shape, ...change });

  test.each([-0.12, -0.06, 0.06, 0.15])('%s s late is timing', (lateS) => {
    const cause = causeOf(changed({ holdS: 0.35 + lateS }));
    expect(cause).toMatchObject({ kind: 'timing', rateRatio: 1, amountRatio: 1 });
    expect(Math.abs(cause!.timingS - lateS)).toBeLessThan(0.0025);
    expect(cause!.explained).toBeGreaterThan(0.98);
  });

  test.each([0.8, 0.88, 1.12, 1.25])('%s times the duration is rate', (ratio) => {
    const cause = causeOf(changed({ releaseS: 1.5 * ratio }));
    expect(cause).toMatchObject({ kind: 'rate', timingS: 0, amountRatio: 1 });
    expect(Math.abs(Math.log(cause!.rateRatio / ratio))).toBeLessThan(0.01);
  });

  test.each([0.8, 0.9, 1.1, 1.2])('%s times the pressure is amount', (ratio) => {
    const cause = causeOf((t) => ratio * braking(shape)(t));
    expect(cause).toMatchObject({ kind: 'amount', timingS: 0, rateRatio: 1 });
    expect(Math.abs(cause!.amountRatio / ratio - 1)).toBeLessThan(0.01);
  });

  test('a bump is none of them', () => {
    const bump: Curve = (t) => braking(shape)(t) + 0.2 * Math.exp(-(((t - 1.1) / 0.08) ** 2));
    expect(causeOf(bump)).toMatchObject({
      kind: 'shape',
      timingS: 0,
      rateRatio: 1,
      amountRatio: 1,
    });
  });

  test('a staircase is none of them', () => {
    const stairs: Curve = (t) =>
      t < 0.5 ? braking(shape)(t) : 0.16 * Math.ceil(braking(shape)(t) / 0.16);
    expect(causeOf(stairs)?.kind).toBe('shape');
  });

  test('two things at once are both measured', () => {
    const cause = causeOf(changed({ holdS: 0.45, releaseS: 1.2 }));
    expect(cause!.timingS).toBeCloseTo(0.1, 2);
    expect(cause!.rateRatio).toBeCloseTo(0.8, 1);
  });

  test('of two things the larger gives the name', () => {
    const late = causeOf((t) => 1.06 * changed({ holdS: 0.53 })(t));
    expect(late?.kind).toBe('timing');
    expect(late?.timingS).toBeCloseTo(0.18, 1);
    const heavy = causeOf((t) => 1.3 * changed({ holdS: 0.39 })(t));
    expect(heavy?.kind).toBe('amount');
  });

  test('what is within the limits for full marks has none', () => {
    expect(causeOf(changed({ holdS: 0.36 }))).toBeNull();
  });
});

describe('dominantCause', () => {
  const target = shapeTarget(SHAPE);
  const late = (lateS: number): RepOutcome =>
    scoreRep(record(braking({ ...SHAPE, holdS: 0.15 + lateS })), target);
  const quick = scoreRep(record(braking({ ...SHAPE, releaseS: 1.2 })), target);
  const nothing = scoreRep(
    record(() => 0),
    target,
  );

  test('needs three reps', () => {
    expect(dominantCause([])).toBeNull();
    expect(dominantCause([late(0.1), late(0.1), nothing, quick])).toBeNull();
  });

  test('is the median of the reps that share it', () => {
    const found = dominantCause([late(0.06), quick, late(0.14), nothing, late(0.1), late(0)]);
    expect(found).toMatchObject({ reps: 3, cause: { kind: 'timing', rateRatio: 1 } });
    expect(found!.cause.timingS).toBeCloseTo(0.1, 2);
  });

  test('early in one rep and late in the next is spread, not a cause', () => {
    expect(dominantCause([late(0.1), late(-0.1), late(0.1), late(-0.1)])).toBeNull();
  });

  test('goes to the larger group', () => {
    const found = dominantCause([late(0.1), late(0.1), late(0.1), quick, quick, quick, quick]);
    expect(found).toMatchObject({ reps: 4, cause: { kind: 'rate' } });
  });
});
