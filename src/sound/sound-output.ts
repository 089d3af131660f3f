import { performance } from 'node:perf_hooks';
import type { SoundCues } from '../drill/sound-cues.ts';
import type { FoundPlayer } from './find-player.ts';
import { Player } from './player.ts';
import { SoundClock } from './sound-clock.ts';
import { Synthesiser } from './synthesiser.ts';

const STEP_MS = 10;

/** Sound that runs beside a drill until it is closed or its player ends. */
export class SoundOutput {
  readonly #player: Player;
  readonly #synthesiser = new Synthesiser();
  readonly #clock = new SoundClock();
  readonly #timer: NodeJS.Timeout;

  constructor({ command }: FoundPlayer) {
    this.#player = new Player(command);
    this.#timer = setInterval(() => this.#step(), STEP_MS);
    this.#timer.unref();
  }

  hear(cues: SoundCues): void {
    this.#synthesiser.hear(cues);
  }

  close(): void {
    clearInterval(this.#timer);
    this.#player.stop();
  }

  #step(): void {
    const samples = this.#synthesiser.render(this.#clock.due(performance.now() / 1000));
    if (!this.#player.write(samples)) clearInterval(this.#timer);
  }
}
