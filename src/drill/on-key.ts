import { chooseInMenu, type DisplayMenu, moveInMenu, turnDisplay } from './display/on-display.ts';
import type { KeyAction } from './drill-message.ts';
import type { DrillModel } from './drill-model.ts';
import type { Feedback } from './drill-view.ts';
import { closeNote, markRep } from './on-note.ts';
import { isWaitedFor, onRating, toggleRating } from './on-rating.ts';
import { hasNextBlock } from './plan/planned-rep.ts';
import { endWait } from './rating-wait.ts';
import {
  enterArming,
  enterSummary,
  isBlockOver,
  nextBlock,
  plannedFeedback,
  type Step,
} from './stages.ts';
import { voidRep } from './void-rep.ts';
import {
  ABORTED_BY_DRIVER,
  CARRY_OVER_STAYS,
  FIRST_OF_DAY_STAYS,
  feedbackChosen,
} from './words.ts';

/** What a key or a learned wheel button does. Anything that stops a rep after its cue makes it an aborted rep. */
export function onKey(before: DrillModel, action: KeyAction): Step {
  if (action === 'note') return markRep(before, isRepUnderWay(before));
  const [model, kept] = closeNote(before);
  const [next, effects] = obey(model, action);
  return [next, [...kept, ...effects]];
}

function obey(model: DrillModel, action: Exclude<KeyAction, 'note'>): Step {
  if (model.menu !== null) return inMenu(model, model.menu, action);
  switch (action) {
    case 'display':
      return [openMenu(model), []];
    case 'layout':
    case 'preview':
    case 'zoom':
    case 'corridor':
    case 'theme':
    case 'picture':
      return turnDisplay(model, action);
    case 'up':
    case 'down':
    case 'choose':
    case 'close':
      return [model, []];
    case 'next':
      return onNext(model);
    case 'repeat':
      return isRepUnderWay(model) ? thenGoOn(abort(model)) : onNext(model);
    case 'pause':
      return onPause(model);
    case 'feedback':
      return [chooseFeedback(model), []];
    case 'finish':
      return onFinish(model);
    case 'self-rating':
      return [toggleRating(model), []];
    case 'low':
    case 'middle':
    case 'high':
      return onRating(model, action);
  }
}

/** The list stands over the picture, so the drill waits for it; a rep under way comes first. */
function openMenu(model: DrillModel): DrillModel {
  if (isRepUnderWay(model)) return model;
  const { kind } = model.stage;
  const goesOn = kind !== 'paused' && kind !== 'summary' && kind !== 'device-lost';
  const menu = { row: 0, goesOn };
  return goesOn
    ? { ...model, menu, stage: { kind: 'paused' }, recording: null }
    : { ...model, menu };
}

function inMenu(model: DrillModel, menu: DisplayMenu, action: Exclude<KeyAction, 'note'>): Step {
  switch (action) {
    case 'up':
      return [moveInMenu(model, menu, -1), []];
    case 'down':
      return [moveInMenu(model, menu, 1), []];
    case 'next':
    case 'choose':
      return chooseInMenu(model, menu);
    case 'layout':
    case 'preview':
    case 'zoom':
    case 'corridor':
    case 'theme':
    case 'picture':
      return turnDisplay(model, action);
    case 'display':
    case 'close':
    case 'pause':
    case 'finish':
      return [closeMenu(model, menu), []];
    default:
      return [model, []];
  }
}

function closeMenu(model: DrillModel, { goesOn }: DisplayMenu): DrillModel {
  const closed = { ...model, menu: null };
  return goesOn ? goOn(closed) : closed;
}

/** True from the cue, or from an onset before it, to the end of the rep. */
export function isRepUnderWay({ stage, atS }: DrillModel): boolean {
  if (stage.kind === 'braking' || stage.kind === 'driving') return true;
  return (stage.kind === 'ready' || stage.kind === 'rolling') && atS >= stage.cueS;
}

/** Pauses, or goes on where it was paused. */
export function onPause(model: DrillModel): Step {
  const { kind } = model.stage;
  if (kind === 'paused') return [goOn(model), []];
  if (kind === 'summary' || kind === 'device-lost') return [model, []];
  const [stopped, effects] = isRepUnderWay(model) ? abort(model) : [model, []];
  return [{ ...stopped, stage: { kind: 'paused' }, recording: null }, effects];
}

function onNext(model: DrillModel): Step {
  const { kind } = model.stage;
  if (kind === 'summary') return afterSummary(model);
  if (isWaitedFor(model)) return [endWait(model), []];
  return [kind === 'after' || kind === 'paused' ? goOn(model) : model, []];
}

/** A plan that is done is the end of the practice. */
function afterSummary(model: DrillModel): Step {
  if (!hasNextBlock(model)) return [model, [{ kind: 'end' }]];
  return [enterArming(nextBlock(model), model.atS), []];
}

function onFinish(model: DrillModel): Step {
  const [stopped, effects] = isRepUnderWay(model) ? abort(model) : [model, []];
  const nothingToSum = stopped.block.done.length + stopped.unscored.length === 0;
  if (model.stage.kind === 'summary' || nothingToSum)
    return [stopped, [...effects, { kind: 'end' }]];
  return [enterSummary(stopped, model.atS), effects];
}

function goOn(model: DrillModel): DrillModel {
  return isBlockOver(model) ? enterSummary(model, model.atS) : enterArming(model, model.atS);
}

function thenGoOn([model, effects]: Step): Step {
  return [goOn(model), effects];
}

function abort(model: DrillModel): Step {
  const { stage, atS } = model;
  if (!('cueS' in stage)) return [model, []];
  return voidRep(
    model,
    { cueS: stage.cueS, endS: atS },
    { voided: 'aborted', reason: ABORTED_BY_DRIVER },
  );
}

/** Turns the feedback of the reps to come round; a second time goes back to the schedule. */
function chooseFeedback(model: DrillModel): DrillModel {
  if (model.block.phase === 'first-of-day') return { ...model, message: FIRST_OF_DAY_STAYS };
  if (model.block.phase === 'carry-over') return { ...model, message: CARRY_OVER_STAYS };
  const chosen: DrillModel['chosenFeedback'] =
    model.chosenFeedback !== null ? null : plannedFeedback(model) === 'shown' ? 'hidden' : 'shown';
  const next = { ...model, chosenFeedback: chosen, message: feedbackChosen(chosen) };
  return { ...next, feedback: isSettled(model) ? model.feedback : settled(next) };
}

/** The rep's feedback can no longer change: it is under way or over. */
function isSettled({ stage }: DrillModel): boolean {
  return stage.kind !== 'arming' && stage.kind !== 'countdown' && stage.kind !== 'paused';
}

function settled(model: DrillModel): Feedback {
  return plannedFeedback(model);
}
