import { describe, expect, test } from 'vitest';
import type { DrillView, Feedback } from '../../src/drill/drill-view.ts';
import { soundCues } from '../../src/drill/sound-cues.ts';
import type { RepScore } from '../../src/score/rep-score.ts';

type Seen = Pick<DrillView, 'feedback' | 'phase' | 'toCueS' | 'brakeLevel' | 'result'>;

const view = (seen: Partial<Seen>): DrillView =>
  ({
    feedback: 'shown',
    phase: 'arming',
    toCueS: null,
    brakeLevel: 0.4,
    result: null,
    ...seen,
  }) as DrillView;

const counting = (toCueS: number): DrillView => view({ phase: 'countdown', toCueS });

const result = (inCorridor: number): DrillView =>
  view({
    phase: 'result',
    result: { outcome: { kind: 'scored', inCorridor } as RepScore } as DrillView['result'],
  });

describe('a shown rep', () => {
  test('ticks once a second of the countdown and once at its end', () => {
    const seconds = [3, 2.99, 2.01, 2, 1.5, 1, 0.5, 0.01];
    const views = [...seconds.map(counting), view({ phase: 'cue' }), view({ phase: 'cue' })];
    const heard = views.map((now, i) => soundCues(now, views[i - 1] ?? null).events);
    expect(heard.map((events) => events.join())).toEqual([
      'tick',
      '',
      '',
      'tick',
      '',
      'tick',
      '',
      '',
      'cue',
      '',
    ]);
  });

  test('is heard as the own level while braking only', () => {
    expect(soundCues(view({ phase: 'braking' }), null).voiceLevel).toBe(0.4);
    expect(soundCues(view({ phase: 'braking', brakeLevel: null }), null).voiceLevel).toBeNull();
    expect(soundCues(view({ phase: 'rest' }), null).voiceLevel).toBeNull();
    expect(soundCues(view({ phase: 'braking', brakeLevel: 0.009 }), null).voiceLevel).toBeNull();
  });

  test('ends in one tone where the release was inside the corridor', () => {
    const good = result(0.4);
    expect(soundCues(good, view({ phase: 'result' })).events).toEqual(['inside']);
    expect(soundCues(good, good).events).toEqual([]);
    expect(soundCues(result(0.39), view({ phase: 'result' })).events).toEqual([]);
  });
});

describe.each<Feedback>(['hidden', 'first-of-day'])('a %s rep', (feedback) => {
  test('is silent', () => {
    for (const seen of [counting(3), view({ phase: 'braking' }), view({ phase: 'cue' }), result(1)])
      expect(soundCues({ ...seen, feedback }, counting(0.1))).toEqual({
        voiceLevel: null,
        events: [],
      });
  });
});
