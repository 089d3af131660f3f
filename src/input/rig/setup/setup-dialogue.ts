import type { LearnedAxis } from '../../hid/learn-axis.ts';
import type { RigDevice } from '../../rig-device.ts';
import type { AxisRole, Rig } from '../rig.ts';
import { saveRig } from '../rig-file.ts';
import type { FoundControl } from './find-control.ts';
import type { ReportTape, Taped } from './report-tape.ts';
import type { RigDraft } from './rig-draft.ts';
import type { SetupTerminal } from './setup-terminal.ts';

/** A control as it was moved in this dialogue. */
export interface MovedControl extends FoundControl<LearnedAxis> {
  readonly moved: Taped;
}

/** What the steps of setting up share. */
export class SetupDialogue {
  readonly terminal: SetupTerminal;
  readonly devices: readonly RigDevice[];
  readonly tape: ReportTape;
  readonly draft: RigDraft;
  /** Axes moved so far, by role. */
  readonly moved: Map<AxisRole, MovedControl> = new Map();
  readonly #dataDir: string;
  #rest: Taped = [];

  constructor(
    terminal: SetupTerminal,
    devices: readonly RigDevice[],
    tape: ReportTape,
    draft: RigDraft,
    dataDir: string,
  ) {
    this.terminal = terminal;
    this.devices = devices;
    this.tape = tape;
    this.draft = draft;
    this.#dataDir = dataDir;
  }

  /** Reports while nothing was touched. */
  get rest(): Taped {
    return this.#rest;
  }

  async recordRest(): Promise<void> {
    this.#rest = (await this.record('Touch nothing for two seconds, then press Enter.')).taped;
  }

  /** Asks for a movement and gives what came until the answer. */
  async record(question: string): Promise<{ readonly answer: string; readonly taped: Taped }> {
    this.tape.start();
    const answer = await this.terminal.ask(question);
    return { answer, taped: this.tape.take() };
  }

  /** Keeps what is confirmed so far, so that setting up can stop at any question and go on another day. */
  async save(): Promise<Rig> {
    const { rig } = this.draft;
    await saveRig(this.#dataDir, rig);
    return rig;
  }
}
