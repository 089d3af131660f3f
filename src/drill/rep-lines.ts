import type { DoneRep, DrillModel } from './drill-model.ts';
import type { RepLine } from './drill-view.ts';
import { plannedBlock } from './plan/planned-rep.ts';
import { isBlockOver } from './stages.ts';

const MOST_LINES = 20;

/** Lines of a block's reps, and which of them said all, bit by bit. */
interface ReadLines {
  readonly readable: number;
  readonly lines: readonly RepLine[];
}

/** Every frame asks for the lines, and few frames change them. */
const LAST_READ: WeakMap<readonly DoneRep[], ReadLines> = new WeakMap();

/** The last reps as the driver may read them now, newest first: the same list for as long as it says the same. */
export function repLines(model: DrillModel): readonly RepLine[] {
  const { done } = model.block;
  const readable = readableBits(model);
  const last = LAST_READ.get(done);
  if (last?.readable === readable) return last.lines;
  const mixed = isMixed(model);
  const lines = done
    .slice(0, MOST_LINES)
    .map((rep, i) => lineOf(rep, (readable & (1 << i)) !== 0, mixed));
  LAST_READ.set(done, { readable, lines });
  return lines;
}

function readableBits(model: DrillModel): number {
  const { done } = model.block;
  let bits = 0;
  for (let i = 0; i < Math.min(done.length, MOST_LINES); i++)
    if (isReadable(model, done[i]!)) bits |= 1 << i;
  return bits;
}

/** The reps of the block whose result may be read, oldest first, each with its line. */
export function* readableLines(model: DrillModel): Generator<readonly [DoneRep, RepLine]> {
  const mixed = isMixed(model);
  for (const done of model.block.done.toReversed())
    if (isReadable(model, done)) yield [done, lineOf(done, true, mixed)];
}

/** True where the block's reps are not all of one target. */
function isMixed(model: DrillModel): boolean {
  const reps = plannedBlock(model)?.reps ?? [];
  return reps.some(({ zone }) => zone !== reps[0]!.zone);
}

/** A void rep says at once why it does not count. */
function isReadable(model: DrillModel, done: DoneRep): boolean {
  return done.voided !== null || isRevealed(model, done);
}

/** True once the score of a rep may be seen: held back for a moment; where reps are a check, or warm up, until all are over. */
export function isRevealed(
  model: DrillModel,
  { tag, revealAtS }: Pick<DoneRep, 'tag' | 'revealAtS'>,
): boolean {
  if (model.stage.kind === 'summary') return true;
  return model.atS >= revealAtS && (tag.phase === 'block' || isBlockOver(model));
}

function lineOf(
  { tag, outcome, voided, call, sentence, glance, warning, gridTarget }: DoneRep,
  revealed: boolean,
  named: boolean,
): RepLine {
  return {
    number: tag.place,
    targetName: named ? gridTarget.name : null,
    feedback: tag.feedback,
    outcome: revealed ? outcome : null,
    voided,
    call,
    sentence: revealed ? sentence : '',
    glance: revealed ? glance : [],
    warning: revealed ? warning : null,
  };
}
