import { describe, expect, test } from 'vitest';
import { scoreRep } from '../../src/score/score-rep.ts';
import golden from '../reference/score-archetypes.json' with { type: 'json' };
import { archetypes, type Crude } from './archetypes.ts';
import { FALLS, record, SHAPE, shapeTarget } from './curves.ts';

interface Row {
  readonly score: number;
  readonly why?: string;
  readonly E?: number;
  readonly Etriv?: number;
  readonly dR?: number;
  readonly dH?: number;
  readonly dC?: number;
  readonly ePk?: number;
  readonly eR?: number;
  readonly M?: number;
  readonly n?: number;
  readonly rr?: number;
  readonly dsparc?: number;
}

const CRUDE: Record<'convex' | 'scurve', Crude> = {
  convex: { meanLevel: 0.278699907, onOffLevel: 0.5334420045, onOffSwitchS: 1.046 },
  scurve: { meanLevel: 0.355580233, onOffLevel: 0.6571437687, onOffSwitchS: 1.121 },
};

/** Half a unit of the last printed digit, and a hair for the binary representation. */
const PRINTED = 0.5001e-4;
const PRINTED_PERCENT = PRINTED / 100;

describe.each(['convex', 'scurve'] as const)('%s target', (family) => {
  const rows: Record<string, Row> = golden[family];
  const target = shapeTarget({ ...SHAPE, fall: FALLS[family] });
  const reps = archetypes(family, CRUDE[family]);

  test('every row of the reference has its rep', () => {
    expect(Object.keys(reps)).toEqual(Object.keys(rows));
  });

  test.each(Object.entries(rows))('%s', (name, row) => {
    const outcome = scoreRep(record(reps[name]!), target);
    if (row.why !== undefined) {
      expect(outcome).toMatchObject({ kind: 'no-rep', score: 0, reason: 'never braked' });
      return;
    }
    if (outcome.kind !== 'scored') throw new Error(outcome.reason);
    const near = (value: number | null, wanted: number | undefined, within = PRINTED): void =>
      expect(Math.abs(value! - wanted!), `${value} for ${wanted}`).toBeLessThanOrEqual(within);
    near(outcome.score, row.score, 1e-3);
    near(outcome.releaseErrorLevel, row.E! / 100, PRINTED_PERCENT);
    near(outcome.onOffErrorLevel, row.Etriv! / 100, PRINTED_PERCENT);
    near(outcome.parts.release, row.dR);
    near(outcome.parts.hit, row.dH);
    near(outcome.parts.smooth, row.dC);
    near(Math.abs(outcome.peakError), row.ePk);
    near(Math.abs(outcome.riseErrorS), row.eR);
    near(outcome.reapplied, row.M);
    near(outcome.rateRatio, row.rr);
    near(outcome.smoothnessDifference, row.dsparc);
    expect(outcome.reapplications).toBe(row.n);
  });
});
