import type { DrillModel } from './drill-model.ts';
import { endWait, endWaitAnswered } from './rating-wait.ts';
import { NOT_RATED, type RatingKey, rated, type SelfRating, wholeRating } from './self-rating.ts';
import type { Step } from './stages.ts';
import { ratingChosen } from './words.ts';

/** A rating has to come before the result: what is said after it is not felt but read. */
export function onRating(model: DrillModel, key: RatingKey): Step {
  const { stage, rating } = model;
  if (!isRatingOpen(model) || rating === null || stage.kind !== 'after') return [model, []];
  const next = rated(rating, key);
  const whole = wholeRating(next);
  if (next === rating || whole === null) return [{ ...model, rating: next }, []];
  const { number } = stage.rep;
  const isStored = model.block.done.some(({ tag }) => tag.number === number);
  return [
    endWaitAnswered(withRating({ ...model, rating: next }, number, whole)),
    isStored ? [{ kind: 'rate', rep: number, rating: whole }] : [],
  ];
}

/** True while the driver is asked, or has just answered. */
function isRatingOpen({ stage, rating, atS }: DrillModel): boolean {
  return stage.kind === 'after' && rating !== null && atS < stage.revealAtS;
}

/** True while an answer is awaited. */
export function isRatingAsked(model: DrillModel): boolean {
  return isRatingOpen(model) && model.rating !== null && wholeRating(model.rating) === null;
}

/** Turns the question on or off, from the next rep on; what is asked now is not waited for any longer. */
export function toggleRating(model: DrillModel): DrillModel {
  const asksRating = !model.asksRating;
  const next = { ...model, asksRating, message: ratingChosen(asksRating) };
  return asksRating ? next : endWait(next);
}

/** True while the result waits for an answer; any key but an answer ends that. */
export function isWaitedFor(model: DrillModel): boolean {
  return model.setup.ratingWaitS !== null && isRatingAsked(model);
}

/** What a finished rep is asked. */
export function firstRating({ asksRating }: DrillModel): DrillModel['rating'] {
  return asksRating ? NOT_RATED : null;
}

/** A rep that is not stored yet takes its rating along. */
function withRating(model: DrillModel, number: number, rating: SelfRating): DrillModel {
  const { block, unscored } = model;
  const withIt = <T extends { readonly tag: { readonly number: number } }>(rep: T): T =>
    rep.tag.number === number ? { ...rep, rating } : rep;
  return {
    ...model,
    unscored: unscored.map(withIt),
    block: { ...block, done: block.done.map(withIt) },
  };
}
