import type { DoneRep, DrillModel } from './drill-model.ts';
import type { RepLine } from './drill-view.ts';
import { plannedBlock } from './plan/planned-rep.ts';
import { isBlockOver } from './stages.ts';

const MOST_LINES = 20;

/** The last reps as the driver may read them now, newest first. */
export function repLines(model: DrillModel): readonly RepLine[] {
  const mixed = isMixed(model);
  return model.block.done
    .slice(0, MOST_LINES)
    .map((done) => lineOf(done, isReadable(model, done), mixed));
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
