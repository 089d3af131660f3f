import type { Practice } from './drill-practice.ts';
import type { DrillSound } from './drill-sound.ts';
import type { RigSource } from './rig-source.ts';
import { SpareTurns } from './spare-turns.ts';

/** What a drill has open while it goes on. */
export class OpenDrill {
  /** Null until a source that comes with the screen is there. */
  rigSource: RigSource | null;
  readonly sound: DrillSound;
  readonly spareTurns: SpareTurns = new SpareTurns();
  /** Where keys come from: the screen, or lines that are typed. */
  front: { close(): void } | null = null;
  practice: Practice | null = null;

  constructor(rigSource: RigSource | null, sound: DrillSound) {
    this.rigSource = rigSource;
    this.sound = sound;
  }

  /** All of it, the terminal first: what goes wrong is told on its normal screen. */
  async close(): Promise<void> {
    this.sound.close();
    this.front?.close();
    await this.shutdown();
  }

  /** Files and devices. A rep that is over is kept, however soon after it a signal ends the program. */
  async shutdown(): Promise<void> {
    this.spareTurns.finish();
    this.practice?.store.close();
    await (this.practice ?? this.rigSource)?.source.close();
  }
}
