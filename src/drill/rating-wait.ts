import type { DrillModel } from './drill-model.ts';

/** How long a result waits for an answer where it has to be heard and typed first; common practice, no source. */
export const RATING_WAIT_S = 60;

/** What was answered is read out before the result. */
const ANSWER_HEARD_S = 0.5;

/** When a result may be seen and what follows it, in seconds of the drill. */
export interface AfterTimes {
  readonly revealAtS: number;
  readonly restFromS: number;
  readonly nextS: number;
  /** The soonest that the result is shown after an answer. */
  readonly answeredAtS: number;
  /** True where the road to the next zone says when the next rep comes. */
  readonly onRoad: boolean;
}

/** The driver has answered: nothing is waited for any more. */
export function endWaitAnswered(model: DrillModel): DrillModel {
  const { stage, atS } = model;
  if (stage.kind !== 'after') return model;
  return endWait(model, Math.max(atS + ANSWER_HEARD_S, stage.answeredAtS));
}

/** Shows the result at `atS` that waited for a rating, and brings forward what follows. */
export function endWait(model: DrillModel, atS: number = model.atS): DrillModel {
  const { setup, stage, block, unscored } = model;
  if (setup.ratingWaitS === null) return model;
  const shown = <T extends { readonly revealAtS: number }>(rep: T): T =>
    rep.revealAtS > atS ? { ...rep, revealAtS: atS } : rep;
  return {
    ...model,
    stage: stage.kind === 'after' ? sooner(stage, atS, setup.timing.showS) : stage,
    unscored: unscored.map(shown),
    block: { ...block, done: block.done.map(shown) },
  };
}

function sooner<T extends AfterTimes>(times: T, atS: number, showS: number): T {
  const { revealAtS, restFromS, nextS, onRoad } = times;
  if (atS >= revealAtS) return times;
  if (onRoad) return { ...times, revealAtS: atS, restFromS: Math.min(nextS, atS + showS) };

  const byS = revealAtS - atS;
  return { ...times, revealAtS: atS, restFromS: restFromS - byS, nextS: nextS - byS };
}
