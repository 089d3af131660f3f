import { describe, expect, test } from 'vitest';
import { FRAMES_PER_SECOND } from '../../src/sound/pcm-format.ts';
import { pitchOfLevel } from '../../src/sound/pitch-of-level.ts';
import { Synthesiser } from '../../src/sound/synthesiser.ts';

/** Upward zero crossings a second: the pitch of one pure tone. */
function pitch(samples: Int16Array): number {
  let crossings = 0;
  for (let i = 1; i < samples.length; i++) if (samples[i - 1]! < 0 && samples[i]! >= 0) crossings++;
  return (crossings * FRAMES_PER_SECOND) / samples.length;
}

const largestStep = (samples: Int16Array): number =>
  samples.reduce((most, sample, i) => Math.max(most, Math.abs(sample - (samples[i - 1] ?? 0))), 0);

const silence = { voiceLevel: null, events: [] } as const;

describe('the pitch of a level', () => {
  // An octave doubles the frequency; A3, A4 and A5 are 220, 440 and 880 Hz by ISO 16:1975.
  test.each([
    [0, 220],
    [0.5, 440],
    [1, 880],
    [-1, 220],
    [2, 880],
  ])('%f is %f Hz', (level, hz) => {
    expect(pitchOfLevel(level)).toBeCloseTo(hz, 9);
  });
});

describe('the synthesiser', () => {
  test('is silent until something is to be heard', () => {
    expect(new Synthesiser().render(1000).every((sample) => sample === 0)).toBe(true);
  });

  test.each([0, 0.5, 1])('sounds level %f at its pitch', (voiceLevel) => {
    const synthesiser = new Synthesiser();
    synthesiser.hear({ voiceLevel, events: [] });
    synthesiser.render(1000);
    const hz = pitch(synthesiser.render(FRAMES_PER_SECOND));
    expect(Math.abs(hz - pitchOfLevel(voiceLevel))).toBeLessThanOrEqual(1);
  });

  test('never clicks: no step is larger than a tone of its pitch and amplitude makes', () => {
    const synthesiser = new Synthesiser();
    const parts: number[] = [];
    for (let i = 0; i < 400; i++) {
      const voiceLevel = i % 7 === 0 ? null : (i % 11) / 10;
      synthesiser.hear({ voiceLevel, events: [] });
      parts.push(...synthesiser.render(97));
    }
    const steepest = 2 * Math.PI * (880 / FRAMES_PER_SECOND);
    const fade = 1 / (0.005 * FRAMES_PER_SECOND);
    expect(largestStep(Int16Array.from(parts))).toBeLessThanOrEqual(
      Math.ceil(32767 * 0.15 * (steepest + fade)) + 1,
    );
  });

  test('plays events one after the other and then nothing', () => {
    const synthesiser = new Synthesiser();
    synthesiser.hear({ voiceLevel: null, events: ['tick', 'cue'] });
    synthesiser.hear(silence);
    const tick = synthesiser.render(0.03 * FRAMES_PER_SECOND);
    const cue = synthesiser.render(0.08 * FRAMES_PER_SECOND);
    expect(Math.round(pitch(tick) / 100)).toBe(10);
    expect(Math.round(pitch(cue) / 100)).toBe(15);
    synthesiser.render(0.01 * FRAMES_PER_SECOND);
    expect(synthesiser.render(1000).every((sample) => sample === 0)).toBe(true);
  });

  test('stays below full scale with everything at once', () => {
    const synthesiser = new Synthesiser();
    synthesiser.hear({ voiceLevel: 1, events: ['inside'] });
    const peak = synthesiser.render(20_000).reduce((most, s) => Math.max(most, Math.abs(s)), 0);
    expect(peak).toBeLessThan(0.36 * 32767);
    expect(peak).toBeGreaterThan(0.3 * 32767);
  });
});
