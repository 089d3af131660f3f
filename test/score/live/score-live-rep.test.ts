import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LiveZone } from '../../../src/live/live-zone.ts';
import type { RepOutcome, RepScore } from '../../../src/score/rep-score.ts';
import { scoreLiveRep } from '../../../src/score/score-live-rep.ts';
import { quantiseRecord } from '../../../src/trace/quantise-record.ts';
import type { RepRecord } from '../../../src/trace/rep-record.ts';
import { paddle, pointsOver, recordOf, WHOLE_RIG, zoneOf } from '../../live-car/rigs.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';

const CORNER = { ...SMOOTH_CORNER, gripShare: 0.95 };
const ZONE = zoneOf(GT_CAR, CORNER);
const POINTS = ZONE.derived.zone.points;
const END_S = ZONE.derived.zone.durationS + 0.8;
const level = pointsOver(POINTS, (point) => point.level);

const scored = (record: RepRecord, zone: LiveZone = ZONE): RepScore => {
  const outcome: RepOutcome = scoreLiveRep(record, zone);
  if (outcome.kind !== 'scored') throw new Error(outcome.reason);
  return outcome;
};
const perfect = recordOf({ brake: level, endS: END_S });

describe('on the real car', () => {
  test('the target itself scores 100, within what counts as no error', () => {
    const rep = scored(perfect);
    expect(rep.score).toBeCloseTo(100, 6);
    expect(rep.releaseErrorLevel).toBeLessThan(0.012);
    expect(Math.abs(rep.live!.brakePointErrorM)).toBeLessThan(1);
    expect(Math.abs(rep.live!.slowestSpeedErrorMps)).toBeLessThan(0.5);
    expect(Math.abs(rep.live!.timeLostS!)).toBeLessThan(0.1);
    expect(rep.live).toMatchObject({ lockUps: [], shifts: [], missedDownshifts: 0 });
  });

  test('without a wheel nothing is said of steering', () => {
    expect(scored(perfect).live).toMatchObject({ turnInErrorM: null, steeringRatio: null });
  });

  test.each([
    ['nothing', () => 0, 'never braked'],
    ['a foot that rests', () => 0.01, 'never braked'],
    ['a stop on the straight', (t: number) => (t > -2.5 ? 0.45 : 0), 'stopped before the release'],
  ] as const)('%s', (_, brake, reason) => {
    const outcome = scoreLiveRep(recordOf({ brake, endS: 6 }), ZONE);
    expect(outcome).toMatchObject({ kind: 'no-rep', version: 2, score: 0, reason });
  });

  test('too short a record holds no rep', () => {
    const none = recordOf({ brake: () => 0, endS: -2.9 });
    expect(scoreLiveRep(none, ZONE)).toMatchObject({ kind: 'no-rep', reason: 'too few samples' });
  });

  test.each([
    ['dumping after the hit', (t: number) => (t < 0.5 ? level(t) : 0)],
    ['dumping at turn-in', (t: number) => (t < 1.6 ? level(t) : 0)],
    ['holding', (t: number) => (t < 0.4 ? level(t) : level(0.4))],
    ['dumping 60 m late', (t: number) => (t < 2 ? level(t - 1) : 0)],
  ])('%s scores 0', (_, brake) => {
    expect(scoreLiveRep(recordOf({ brake, endS: END_S + 2 }), ZONE).score).toBe(0);
  });

  test('an over-rev is told', () => {
    const zone = zoneOf(GT_CAR, CORNER, {
      ...WHOLE_RIG,
      steering: false,
      throttle: false,
      clutch: false,
    });
    const buttons = [paddle(0.2), paddle(0.5), paddle(0.8)];
    const rep = scored(recordOf({ brake: level, buttons, endS: END_S }), zone);
    expect(rep.live!.shifts.map(({ verdict }) => verdict)).toContain('over-rev');
    expect(rep.live!.shifts[0]).toMatchObject({ fromGear: 5, toGear: 4 });
  });
});

describe('laws', () => {
  test('quantised or not, sent on change or at any rate: one outcome', () => {
    const once = scored(perfect);
    expect(scored(quantiseRecord(perfect))).toEqual(once);
    const { timeS, value } = perfect.brake;
    fc.assert(
      fc.property(fc.array(fc.nat(timeS.length - 1), { maxLength: 40 }), (again) => {
        const sent = Array.from(timeS, (t, i) => [t, value[i]!] as const);
        const resent = again.map((i) => [timeS[i]! + 0.0004, value[i]!] as const);
        const all = [...sent, ...resent].sort((a, b) => a[0] - b[0]);
        const brake = {
          timeS: Float64Array.from(all, ([t]) => t),
          value: Float64Array.from(all, ([, v]) => v),
        };
        expect(scored({ ...perfect, brake })).toEqual(once);
      }),
      { numRuns: 5 },
    );
  });

  test('a longer rest before the zone changes nothing', () => {
    const { brake } = perfect;
    const earlier = Float64Array.from({ length: 2000 }, (_, i) => -5.3 + i / 1000);
    const longer = {
      timeS: Float64Array.from([...earlier, ...brake.timeS]),
      value: Float64Array.from([...new Float64Array(2000), ...brake.value]),
    };
    expect(scored({ ...perfect, brake: longer })).toEqual(scored(perfect));
  });

  test('the later or the earlier the brake, the less for its point', () => {
    const metres = fc.integer({ min: 1, max: 30 });
    fc.assert(
      fc.property(metres, metres, fc.constantFrom(1, -1), (a, b, sign) => {
        const partOf = (m: number): number => {
          const brake = (t: number): number => level(t - (sign * m) / CORNER.approachSpeedMps);
          return scored(recordOf({ brake, endS: END_S + 1 })).parts.brakePoint!;
        };
        expect(partOf(Math.max(a, b))).toBeLessThanOrEqual(partOf(Math.min(a, b)));
      }),
      { numRuns: 6 },
    );
  });

  test('the slower the hit, the less for it', () => {
    const hits = [0, 0.06, 0.12, 0.18].map((lateS) => {
      const brake = (t: number): number => (t < 0.5 ? level((t * 0.2) / (0.2 + lateS)) : level(t));
      return scored(recordOf({ brake, endS: END_S })).parts.hit;
    });
    expect(hits).toEqual([...hits].sort((a, b) => b - a));
    expect(hits[3]!).toBeLessThan(hits[0]!);
  });
});
