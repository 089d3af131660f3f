import type { SoundCues, SoundEvent } from '../drill/sound-cues.ts';
import { FRAMES_PER_SECOND } from './pcm-format.ts';
import { pitchOfLevel } from './pitch-of-level.ts';

/** Shares of full amplitude; how loud that is, is for the system's volume. */
const VOICE_AMPLITUDE = 0.15;
const EVENT_AMPLITUDE = 0.2;
/** What starts or stops within less is heard as a click. */
const FADE_S = 0.005;

const EVENT_TONES: Readonly<Record<SoundEvent, { readonly hz: number; readonly seconds: number }>> =
  {
    tick: { hz: 1000, seconds: 0.03 },
    cue: { hz: 1500, seconds: 0.08 },
    inside: { hz: 660, seconds: 0.3 },
  };

/** A tone that fades in and out, continuous in phase whatever its pitch does. */
class Tone {
  #phase = 0;
  #gain = 0;

  /** One frame, -1..1. */
  next(hz: number, isOn: boolean): number {
    const step = 1 / (FADE_S * FRAMES_PER_SECOND);
    this.#gain = isOn ? Math.min(1, this.#gain + step) : Math.max(0, this.#gain - step);
    if (this.#gain === 0) {
      this.#phase = 0;
      return 0;
    }
    this.#phase = (this.#phase + hz / FRAMES_PER_SECOND) % 1;
    return this.#gain * Math.sin(2 * Math.PI * this.#phase);
  }
}

/** Turns cues into samples. */
export class Synthesiser {
  readonly #voice = new Tone();
  readonly #event = new Tone();
  #voiceHz = pitchOfLevel(0);
  #voiceOn = false;
  readonly #waiting: SoundEvent[] = [];
  #eventHz = 0;
  #eventFrames = 0;

  /** What to sound like from the next frame on. */
  hear({ voiceLevel, events }: SoundCues): void {
    this.#voiceOn = voiceLevel !== null;
    // Silence keeps the last pitch, so that the tone does not slide while it fades.
    if (voiceLevel !== null) this.#voiceHz = pitchOfLevel(voiceLevel);
    this.#waiting.push(...events);
  }

  /** The next `frames` samples. */
  render(frames: number): Int16Array {
    const samples = new Int16Array(frames);
    for (let i = 0; i < frames; i++) {
      const voice = VOICE_AMPLITUDE * this.#voice.next(this.#voiceHz, this.#voiceOn);
      samples[i] = Math.round(32767 * (voice + EVENT_AMPLITUDE * this.#nextOfEvent()));
    }
    return samples;
  }

  #nextOfEvent(): number {
    if (this.#eventFrames === 0) {
      const event = this.#waiting.shift();
      if (event !== undefined) {
        const { hz, seconds } = EVENT_TONES[event];
        this.#eventHz = hz;
        this.#eventFrames = Math.round(seconds * FRAMES_PER_SECOND);
      }
    }
    const isOn = this.#eventFrames > 0;
    if (isOn) this.#eventFrames--;
    return this.#event.next(this.#eventHz, isOn);
  }
}
