import { FRAMES_PER_SECOND } from './pcm-format.ts';

/** How much is handed over before it is due: a timer that comes late must not be heard. */
export const LEAD_S = 0.03;
/** After a pause longer than this the missed time is left out and not caught up with. */
const LONGEST_GAP_S = 0.1;

/** Says how many frames are due. Times are seconds of any steady clock. */
export class SoundClock {
  #handedOverS: number | null = null;

  /** Frames to hand over at `nowS`. */
  due(nowS: number): number {
    const last = this.#handedOverS;
    const started = last === null || nowS - last > LONGEST_GAP_S ? nowS : last;
    const frames = Math.max(0, Math.floor((nowS + LEAD_S - started) * FRAMES_PER_SECOND));
    this.#handedOverS = started + frames / FRAMES_PER_SECOND;
    return frames;
  }
}
