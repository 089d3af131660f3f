import { describe, expect, test } from 'vitest';
import { FRAMES_PER_SECOND } from '../../src/sound/pcm-format.ts';
import { LEAD_S, SoundClock } from '../../src/sound/sound-clock.ts';

describe('the sound clock', () => {
  test('hands over the lead first, then what went by', () => {
    const clock = new SoundClock();
    expect(clock.due(7)).toBe(Math.floor(LEAD_S * FRAMES_PER_SECOND));
    expect(clock.due(7)).toBe(0);
    // Part of a frame is left for the next time.
    expect(Math.abs(clock.due(7.01) - FRAMES_PER_SECOND / 100)).toBeLessThanOrEqual(1);
  });

  test('keeps up with an uneven timer to the frame', () => {
    const clock = new SoundClock();
    let frames = 0;
    for (let i = 0; i <= 3000; i++) frames += clock.due(i / 1000 + (i % 3) * 0.0003);
    expect(Math.abs(frames - (3 + LEAD_S) * FRAMES_PER_SECOND)).toBeLessThan(30);
  });

  test('does not catch up with a pause', () => {
    const clock = new SoundClock();
    clock.due(0);
    expect(clock.due(60)).toBe(Math.floor(LEAD_S * FRAMES_PER_SECOND));
  });
});
