import { lastValueFrom, takeWhile, tap } from 'rxjs';
import type { DisplaySettings } from '../drill/display/display-settings.ts';
import type { DrillEffect, DrillMessage, FinishedRep } from '../drill/drill-message.ts';
import type { DoneRep, DrillModel } from '../drill/drill-model.ts';
import type { DrillSetup } from '../drill/drill-setup.ts';
import type { BlockSummary, DrillView, PlanView, RepLine } from '../drill/drill-view.ts';
import { planViewOf } from '../drill/plan/plan-view-of.ts';
import { hasNextBlock } from '../drill/plan/planned-rep.ts';
import { readableLines } from '../drill/rep-lines.ts';
import type { SelfRating } from '../drill/self-rating.ts';
import { startDrill } from '../drill/start-drill.ts';
import { update } from '../drill/update.ts';
import { viewOf } from '../drill/view-of.ts';
import type { ReportSource } from '../input/report-source.ts';
import type { RigDecoder } from '../input/rig/rig-decoder.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { scoreLiveRep } from '../score/score-live-rep.ts';
import { scorePacedRep } from '../score/score-paced-rep.ts';
import { scoreRep } from '../score/score-rep.ts';
import { quantiseRecord } from '../trace/quantise-record.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { type DriverKeys, drillMessages, SOURCE_ENDED } from './drill-messages.ts';

/** What the world does for a drill. */
export interface DrillHooks extends DriverKeys {
  /** Writes a rep down; it has to be safe when this returns, for then the driver is told about it. */
  store(rep: FinishedRep): void;
  /** The driver has rated a rep that was given to `store`. */
  rate?(rep: number, rating: SelfRating): void;
  /** The driver marks a rep that was given to `store`. */
  note?(rep: number): void;
  /** What the driver has typed about a rep that was marked. */
  noteText?(rep: number, text: string): void;
  /** How the driver wants to see the drill from now on. */
  display?(settings: DisplaySettings): void;
  /** Once per batch and after each key; whoever draws it has to thin it out. */
  onView?(view: DrillView): void;
  /** Each rep once, as soon as its result may be read. */
  onRep?(line: RepLine, rep: DoneRep): void;
  /** Once per block. */
  onSummary?(summary: BlockSummary, plan: PlanView | null): void;
  /** Nobody presses keys: goes on after first-of-day reps and through a plan, else ends after the first block. */
  readonly unattended?: boolean;
}

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
  await lastValueFrom(driven$, { defaultValue: null });
  return loop.model;
}

function outcomeOf(
  { target, zone, paced }: Extract<DrillEffect, { kind: 'score' }>,
  record: RepRecord,
): RepOutcome {
  if (zone !== null) return scoreLiveRep(record, zone);
  return paced ? scorePacedRep(record, target) : scoreRep(record, target);
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
  }

  take(message: DrillMessage): void {
    const [model, effects] = update(this.model, message);
    this.model = model;
    for (const effect of effects) this.#do(effect);
    if (message.kind === 'scored') return;
    this.#tell();
    if (this.#hooks.unattended === true && this.model.stage.kind === 'summary' && !this.isOver)
      this.take({ kind: 'key', action: this.#goesOn ? 'next' : 'finish' });
  }

  get #goesOn(): boolean {
    if (this.model.plan === null) return this.model.block.phase === 'first-of-day';
    return hasNextBlock(this.model);
  }

  #do(effect: DrillEffect): void {
    switch (effect.kind) {
      case 'score': {
        // What is scored is what is stored, to the bit: a rescored history agrees with what the driver was told.
        const record = quantiseRecord(effect.record);
        this.take({ kind: 'scored', rep: effect.rep, outcome: outcomeOf(effect, record) });
        break;
      }
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
