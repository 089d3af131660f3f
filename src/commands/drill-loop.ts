import { lastValueFrom, takeWhile, tap } from 'rxjs';
import type { DrillEffect, DrillMessage, ScoreEffect } from '../drill/drill-message.ts';
import type { DrillModel } from '../drill/drill-model.ts';
import type { DrillSetup } from '../drill/drill-setup.ts';
import type { RepLine } from '../drill/drill-view.ts';
import { isCalm } from '../drill/is-calm.ts';
import { planViewOf } from '../drill/plan/plan-view-of.ts';
import { hasNextBlock } from '../drill/plan/planned-rep.ts';
import { readableLines } from '../drill/rep-lines.ts';
import { startDrill } from '../drill/start-drill.ts';
import { update } from '../drill/update.ts';
import { viewOf } from '../drill/view-of.ts';
import type { ReportSource } from '../input/report-source.ts';
import type { RigDecoder } from '../input/rig/rig-decoder.ts';
import { atOnce, type InPieces } from '../score/in-pieces.ts';
import { quantiseRecord } from '../trace/quantise-record.ts';
import type { DrillHooks } from './drill-hooks.ts';
import { drillMessages, SOURCE_ENDED } from './drill-messages.ts';
import { outcomeOf } from './outcome-of.ts';
import { rehearseRep } from './rehearse-rep.ts';

/**
 * Drives a drill from report bytes: source, decoder, update, effects. The source is neither opened nor closed here.
 *
 * @returns the last state of the drill, when the driver has finished or the source has ended; rejects with whatever
 *   the source or a hook throws
 */
export async function runDrill(
  source: ReportSource,
  decoder: RigDecoder,
  setup: DrillSetup,
  hooks: DrillHooks,
): Promise<DrillModel> {
  const loop = new DrillLoop(source, setup, hooks);
  const driven$ = drillMessages(source, decoder, hooks).pipe(
    takeWhile((message): message is DrillMessage => message !== SOURCE_ENDED),
    tap((message) => loop.take(message)),
    takeWhile(() => !loop.isOver),
  );
  await lastValueFrom(driven$, { defaultValue: null }).finally(() => loop.catchUp());
  return loop.model;
}

/** Keys and buttons are obeyed by a drill that has scored all reps that are over. */
function canWait(message: DrillMessage): boolean {
  return message.kind === 'batch' && message.batch.buttons.length === 0;
}

/** The drill's state and the world it acts on. */
class DrillLoop {
  readonly #source: ReportSource;
  readonly #hooks: DrillHooks;
  /** Attempts whose result was told. */
  readonly #told: Set<number> = new Set();
  #lines: readonly RepLine[] = [];
  #summed = 0;
  model: DrillModel;
  isOver = false;

  constructor(source: ReportSource, setup: DrillSetup, hooks: DrillHooks) {
    this.#source = source;
    this.#hooks = hooks;
    this.model = startDrill(setup);
    hooks.spareTurns?.rehearse(rehearseRep(setup));
  }

  take(message: DrillMessage): void {
    if (!canWait(message)) this.catchUp();
    for (const effect of this.#update(message)) {
      if (effect.kind !== 'score') this.catchUp();
      this.#do(effect);
    }
    this.#tell();
    if (this.#hooks.unattended === true && this.model.stage.kind === 'summary' && !this.isOver)
      this.take({ kind: 'key', action: this.#goesOn ? 'next' : 'finish' });
    if (message.kind === 'batch') this.#hooks.spareTurns?.take(isCalm(this.model));
  }

  /** Does at once whatever waits for a spare turn. */
  catchUp(): void {
    this.#hooks.spareTurns?.finish();
  }

  #update(message: DrillMessage): readonly DrillEffect[] {
    const [model, effects] = update(this.model, message);
    this.model = model;
    return effects;
  }

  get #goesOn(): boolean {
    if (this.model.plan === null) return this.model.block.phase === 'first-of-day';
    return hasNextBlock(this.model);
  }

  #do(effect: DrillEffect): void {
    switch (effect.kind) {
      case 'score':
        this.#scoreLater(effect);
        break;
      case 'store':
        this.#hooks.store(effect.rep);
        break;
      case 'rate':
        this.#hooks.rate?.(effect.rep, effect.rating);
        break;
      case 'note':
        this.#hooks.note?.(effect.rep);
        break;
      case 'note-text':
        this.#hooks.noteText?.(effect.rep, effect.text);
        break;
      case 'display':
        this.#hooks.display?.(effect.settings);
        break;
      case 'end':
        this.isOver = true;
    }
  }

  #scoreLater(effect: ScoreEffect): void {
    const scoring = this.#score(effect);
    const { spareTurns } = this.#hooks;
    if (spareTurns === undefined) atOnce(scoring);
    else spareTurns.add(scoring);
  }

  *#score(effect: ScoreEffect): InPieces<void> {
    // What is scored is what is stored, to the bit: a rescored history agrees with what the driver was told.
    const record = quantiseRecord(effect.record);
    yield;
    const outcome = yield* outcomeOf(effect, record);
    yield;
    const effects = this.#update({ kind: 'scored', rep: effect.rep, outcome });
    yield;
    for (const next of effects) this.#do(next);
  }

  #tell(): void {
    const { onSummary, onView } = this.#hooks;
    const { stage, block } = this.model;
    const view = viewOf(this.model);
    if (view.lastReps !== this.#lines) this.#tellReps();
    this.#lines = view.lastReps;
    if (stage.kind === 'summary' && block.number > this.#summed) {
      this.#summed = block.number;
      onSummary?.(stage.summary, planViewOf(this.model));
    }
    this.#source.see(view);
    onView?.(view);
  }

  #tellReps(): void {
    for (const [done, line] of readableLines(this.model)) {
      if (this.#told.has(done.tag.number)) continue;
      this.#told.add(done.tag.number);
      this.#hooks.onRep?.(line, done);
    }
  }
}
