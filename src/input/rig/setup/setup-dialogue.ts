import type { LearnedAxis } from '../../hid/learn-axis.ts';
import type { RigDevice } from '../../rig-device.ts';
import type { AxisRole, Rig } from '../rig.ts';
import type { FoundControl } from './find-control.ts';
import type { ReportTape, Taped } from './report-tape.ts';
import type { RigDraft } from './rig-draft.ts';
import type { SetupStep } from './setup-draft.ts';
import type { SetupKeeper } from './setup-keeper.ts';
import type { SetupTerminal, WantedMovement } from './setup-terminal.ts';

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
  readonly #keeper: SetupKeeper;
  #rest: Taped = [];

  constructor(
    terminal: SetupTerminal,
    devices: readonly RigDevice[],
    tape: ReportTape,
    draft: RigDraft,
    keeper: SetupKeeper,
  ) {
    this.terminal = terminal;
    this.devices = devices;
    this.tape = tape;
    this.draft = draft;
    this.#keeper = keeper;
  }

  /** Reports while nothing was touched. */
  get rest(): Taped {
    return this.#rest;
  }

  async recordRest(): Promise<void> {
    const question = 'Touch nothing for two seconds, then press Enter.';
    this.#rest = (await this.record(question, 'nothing')).taped;
  }

  /** Asks for a movement and gives what came until the answer. */
  async record(
    question: string,
    wanted: WantedMovement,
  ): Promise<{ readonly answer: string; readonly taped: Taped }> {
    this.tape.start();
    const answer = await this.terminal.ask(question, wanted);
    return { answer, taped: this.tape.take() };
  }

  /** Does a step unless it was done before setting up was left. */
  async step(step: SetupStep, ask: () => Promise<void>): Promise<void> {
    if (this.#keeper.isDone(step)) return;
    await ask();
    await this.#keeper.done(step);
  }

  /** Keeps what is confirmed so far, so that setting up can stop at any question and go on another day. */
  async save(): Promise<Rig> {
    const { rig } = this.draft;
    await this.#keeper.save(rig);
    return rig;
  }
}
