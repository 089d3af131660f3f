import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

const CAUSE = json.object('why the release was off', {
  kind: json.oneOfWords('the named cause', 'timing', 'rate', 'amount', 'shape'),
  ...json.numbers({
    timing_s: 'late is positive',
    rate_ratio: 'time of the release over that of the target, slow is above 1',
    amount_ratio: 'level of the release over that of the target, heavy is above 1',
    explained_share: 'share of the error that the cause explains',
  }),
});

const SIDE = json.object('what was measured beside the score', {
  ...json.numbersOrNull({
    start_error_s: 'cue to braking',
    lift_to_hit_s: 'off the throttle to on the brake',
    overlap_s: 'both pedals at once',
  }),
  ...json.numbers({ resting_level: 'level of the resting foot' }),
  ...json.numbersOrNull({
    shift_ripple_level: 'ripple of the level around shifts',
    steering_lag_s: 'steering behind the target',
  }),
});

const KEY_POINTS = json.object('Key points of the rep from the start of its record', {
  ...json.numbers({
    onset_s: 'brake on',
    near_peak_s: 'near the peak',
    peak_s: 'peak',
    peak_level: 'level of the peak',
  }),
  ...json.numbersOrNull({
    start_of_release_s: 'start of release',
    half_release_s: 'half of the release',
    final_release_s: 'last tenth begins',
    brake_off_s: 'brake off',
  }),
});

const GRIP_EVENT = json.object('Tyres at or beyond their limit on one axle', {
  axle: json.oneOfWords('which', 'front', 'rear'),
  ...json.numbers({
    from_m: 'where it began, from turn-in',
    to_m: 'where it ended, from turn-in',
    from_s: 'when it began',
    to_s: 'when it ended',
  }),
});

const SHIFT = json.object('One downshift', {
  ...json.wholes({ from_gear: 'gear before', to_gear: 'gear after' }),
  ...json.numbers({ at_m: 'where, from turn-in' }),
  ...json.numbersOrNull({ earliest_m: 'earliest safe place, from turn-in' }),
  verdict: json.oneOfWords('how it was', 'safe', 'too early', 'over-rev', 'late'),
  ...json.numbers({ engine_rpm: 'revs after it' }),
});

const LIVE = json.object(
  'what the live car adds: rep less target, places from turn-in, before it negative',
  {
    ...json.numbers({
      brake_point_error_m: 'brake point, late is positive',
      brake_point_error_s: 'the same as time',
      slowest_speed_mps: 'slowest speed',
      slowest_speed_error_mps: 'slowest speed, too fast is positive',
    }),
    ...json.numbersOrNull({ start_of_release_error_m: 'start of release, late is positive' }),
    ...json.numbers({ release_speed_error_mps: 'speed at the start of release' }),
    ...json.numbersOrNull({
      apex_level: 'level where the path is tightest',
      apex_error_level: 'that less what the grip allowed',
    }),
    ...json.numbers({ grip_use_share: 'mean use of the axle with less to spare' }),
    lock_ups: json.list('in driving order', GRIP_EVENT),
    anti_lock: json.list('in driving order', GRIP_EVENT),
    ...json.numbers({
      locked_s: 'foot on locked wheels, beyond what it needs to notice',
      anti_lock_after_turn_in_s: 'anti-lock at work after turn-in',
      lengthened_m: 'road lost to tyres beyond their limit',
    }),
    shifts: json.list('in driving order', SHIFT),
    ...json.wholes({ missed_downshifts_count: 'downshifts never made' }),
    ...json.numbersOrNull({
      time_lost_s: 'time to the slowest point, slow is positive',
      turn_in_error_m: 'turn-in, early is negative',
      steering_ratio: 'steering angle against the path',
    }),
  },
);

const SCORED: AnswerFields = {
  ...json.numbers({
    release_share: 'part of the score: the release',
    hit_share: 'part of the score: the hit',
    smooth_share: 'part of the score: no going back up',
  }),
  ...json.numbersOrNull({ brake_point_share: 'part of score 2: the brake point' }),
  ...json.numbers({
    release_lost_points: 'lost by the release',
    hit_lost_points: 'lost by the hit',
    smooth_lost_points: 'lost by going back up',
  }),
  ...json.numbersOrNull({ brake_point_lost_points: 'lost by the brake point, in score 2' }),
  ...json.numbers({
    release_error_level: 'error of the release, root mean square',
    average_error_level: 'mean error of the release, heavy is positive',
    on_off_error_level: 'error of the best on/off foot',
    in_corridor_share: 'share of the release inside the corridor',
    peak_error_share: 'peak against the target, heavy is positive',
    rise_error_s: 'rise against the target, slow is positive',
  }),
  ...json.wholes({ reapplications_count: 'times the pressure went back up' }),
  ...json.numbers({ reapplied_share: 'what went back up, of the plateau' }),
  ...json.numbersOrNull({
    rate_ratio: 'steepest rate of the release over that of the target, steep is above 1',
    smoothness_difference: 'spectral arc length less that of the target',
    start_of_release_error_s: 'start of release, late is positive',
    half_release_error_s: 'half of the release, late is positive',
    final_release_error_s: 'last tenth, late is positive',
    brake_off_error_s: 'brake off, late is positive',
  }),
  key_points: KEY_POINTS,
  cause: json.orNull(CAUSE),
  live: json.orNull(LIVE),
};

/**
 * What became of a rep, with `of` before it: a score, or the reason why there is none.
 */
export function outcomeAnswer(description: string, of: AnswerFields = {}): readonly AnswerSchema[] {
  const form = (outcome: string, more: AnswerFields): AnswerSchema =>
    json.object(description, {
      ...of,
      outcome: { const: outcome, description: 'what became of it' },
      ...json.numbers({ score: 'the score, 0 where there was no rep' }),
      ...json.wholes({ score_version: 'version of the score' }),
      score_provisional: json.flag('the limits of this score have not seen enough real pedals'),
      sentence: json.text('in words for the driver; empty where there is nothing to say'),
      ...more,
      side: json.orNull(SIDE),
      flags: json.list(
        'what was odd about the record',
        json.oneOfWords('One thing', 'gap', 'clipped', 'short-baseline', 'double', 'not-released'),
      ),
    });
  return [form('scored', SCORED), form('no-rep', { reason: json.text('why there is no score') })];
}

/** The causes that a summary names. */
export const CAUSE_KIND: AnswerSchema = json.orNull(
  json.oneOfWords('the named cause', 'timing', 'rate', 'amount', 'shape'),
);
