import { describe, expect, test } from 'vitest';
import { followedTarget } from '../../../src/live/followed-target.ts';
import type { RepScore } from '../../../src/score/rep-score.ts';
import { scoreLiveRun } from '../../../src/score/score-live-rep.ts';
import golden from '../../reference/live-score.json' with { type: 'json' };
import { bareZone, type Driven, driveByHand, type HandRep, handLevel } from './hand-driven.ts';

const zone = bareZone();
const { newtons_per_level: newtonsPerLevel } = golden;

function driven(rep: HandRep): Driven {
  const fromS = rep.late_m / zone.corner.approachSpeedMps;
  return driveByHand(zone, (sM, timeS) => handLevel(rep, sM, timeS - fromS), newtonsPerLevel);
}

function near(value: number | null, wanted: number | null, within: number, what: string): void {
  if (wanted === null) expect(value, what).toBeNull();
  else expect(Math.abs(value! - wanted), `${what}: ${value} for ${wanted}`).toBeLessThan(within);
}

test('the zone is that of the reference', () => {
  const { zone: solved, keys } = zone.derived;
  near(solved.brakePointM, golden.brake_point_m, 0.01, 'brake point');
  near(keys.startOfRelease.sM, golden.start_of_release_m, 1, 'start of release');
  near(keys.slowest.speedMps, golden.slowest_mps, 1e-6, 'slowest speed');
  near(solved.durationS, golden.duration_s, 1e-3, 'duration');
  near(keys.peak.level, golden.peak_level, 1e-4, 'peak');
});

describe.each(Object.entries(golden.reps))('%s', (_, row) => {
  const { run, record } = driven(row.rep);

  test.each([
    ['ratio', row.followed],
    ['place', row.followed_place],
    ['speed', row.followed_speed],
  ] as const)('followed target, slower by %s', (way, wanted) => {
    const riseS = run.columns.timeS[row.rise_step]!;
    const { level } = followedTarget(zone, run, riseS, way);
    const found = wanted.map((__, i) => level[row.rise_step + 100 * i]!);
    const worst = Math.max(...found.map((value, i) => Math.abs(value - wanted[i]!)));
    expect(worst).toBeLessThan(0.002);
  });

  test('score', () => {
    const outcome = scoreLiveRun(record, run) as RepScore;
    expect(outcome).toMatchObject({ kind: 'scored', version: 2 });
    const { parts, live } = outcome;
    near(outcome.score, row.score, 0.6, 'score');
    near(parts.release, row.release, 0.01, 'release');
    near(parts.hit, row.hit, 0.01, 'hit');
    near(parts.smooth, row.smooth, 0.01, 'smooth');
    near(parts.brakePoint!, row.brake_point, 0.01, 'brake point');
    near(outcome.releaseErrorLevel, row.release_error_level, 1e-3, 'release error');
    near(outcome.averageErrorLevel, row.average_error_level, 1e-3, 'average error');
    near(outcome.onOffErrorLevel, row.on_off_error_level, 1e-3, 'on/off error');
    near(outcome.peakError, row.peak_error, 2e-3, 'peak');
    near(outcome.riseErrorS, row.rise_error_s, 2.1e-3, 'rise');
    near(live!.brakePointErrorM, row.brake_point_error_m, 0.15, 'brake point');
    near(live!.slowestSpeedErrorMps, row.slowest_speed_error_mps, 0.01, 'slowest speed');
    near(live!.startOfReleaseErrorM, row.start_of_release_error_m, 0.5, 'start of release');
    near(live!.timeLostS, row.time_lost_s, 3e-3, 'time lost');
    expect(outcome.reapplications).toBe(row.reapplications);
  });
});
