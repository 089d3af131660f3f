import { changedText } from '../../profile/edit/changed-text.ts';
import { answered } from './answer-question.ts';
import { addBleed, addKnot, removePoint } from './change-points.ts';
import { curvePoints } from './curve-point.ts';
import type { EditEffect, EditMessage } from './edit-message.ts';
import {
  type EditModel,
  type EditPast,
  editedText,
  isChanged,
  selectedPoint,
} from './edit-model.ts';
import type { EditOutcome } from './edit-outcome.ts';
import { COARSEST_STEP, placeStep, valueStep } from './edit-steps.ts';
import { movePoint } from './move-point.ts';
import { moveValue } from './move-value.ts';
import { nextForm } from './release-form.ts';

type EditUpdate = readonly [EditModel, readonly EditEffect[]];

/**
 * The next model and what is to be done. A change whose text would not be a sound target is refused with the reason,
 * so that the text can be saved at any time.
 */
export function updateEdit(model: EditModel, message: EditMessage): EditUpdate {
  const asked = answered(model, message);
  if (asked !== null) return asked;
  const quiet = { ...model, said: null };
  switch (message.kind) {
    case 'save':
      return [quiet, [writeOf(model, false)]];
    case 'quit':
      return isChanged(model)
        ? [{ ...quiet, question: { kind: 'quit' } }, []]
        : [quiet, [{ kind: 'quit' }]];
    default:
      return [withoutEffect(quiet, message), []];
  }
}

function writeOf({ now }: EditModel, thenQuit: boolean): EditEffect {
  return { kind: 'write', text: now.text, path: null, thenQuit };
}

function withoutEffect(model: EditModel, message: EditMessage): EditModel {
  switch (message.kind) {
    case 'choose':
      return choose(model, message.by);
    case 'step':
      return { ...model, step: Math.min(COARSEST_STEP, Math.max(0, model.step + message.by)) };
    case 'undo':
      return goBack(model);
    case 'redo':
      return goForward(model);
    case 'help':
      return { ...model, help: !model.help };
    case 'close':
      return { ...model, help: false };
    default:
      return edited(model, message);
  }
}

function choose(model: EditModel, by: 1 | -1): EditModel {
  const ids = curvePoints(model.now.file).map(({ id }) => id);
  const at = ids.indexOf(selectedPoint(model).id);
  return { ...model, selected: ids[(at + by + ids.length) % ids.length]! };
}

function edited(model: EditModel, message: EditMessage): EditModel {
  const outcome = outcomeOf(model, message);
  if (outcome === null) return model;
  if (outcome.kind === 'refused') return refuse(model, outcome.why);
  if (outcome.changes.length === 0)
    return refuse(model, 'That changes nothing: take a coarser step.');
  const next = editedText(changedText(model.now.text, outcome.changes), model.fileName);
  if (typeof next === 'string') return refuse(model, next);
  return {
    ...model,
    now: next,
    undo: [...model.undo, pastOf(model)],
    redo: [],
    selected: outcome.select ?? model.selected,
    said: outcome.done === null ? null : { kind: 'done', words: outcome.done },
  };
}

function outcomeOf(model: EditModel, message: EditMessage): EditOutcome | null {
  const { file } = model.now;
  const point = selectedPoint(model);
  switch (message.kind) {
    case 'move':
      return movePoint(file, point, message.by * placeStep(file, model.step), message.reach);
    case 'level':
      return moveValue(file, point, message.by * valueStep(point, model.step));
    case 'add-knot':
      return addKnot(file, point);
    case 'remove':
      return removePoint(file, point);
    case 'bleed':
      return addBleed(file);
    case 'form':
      return nextForm(file);
    default:
      return null;
  }
}

function refuse(model: EditModel, words: string): EditModel {
  return { ...model, said: { kind: 'refused', words } };
}

function pastOf({ now, selected }: EditModel): EditPast {
  return { text: now.text, selected };
}

function goBack(model: EditModel): EditModel {
  const last = model.undo.at(-1);
  if (last === undefined) return refuse(model, 'There is nothing to undo.');
  const undo = model.undo.slice(0, -1);
  return { ...goTo(model, last), undo, redo: [...model.redo, pastOf(model)] };
}

function goForward(model: EditModel): EditModel {
  const next = model.redo.at(-1);
  if (next === undefined) return refuse(model, 'There is nothing to do again.');
  const redo = model.redo.slice(0, -1);
  return { ...goTo(model, next), undo: [...model.undo, pastOf(model)], redo };
}

/** Every text in the past was a sound target when it came there. */
function goTo(model: EditModel, { text, selected }: EditPast): EditModel {
  const now = editedText(text, model.fileName);
  return typeof now === 'string' ? refuse(model, now) : { ...model, now, selected };
}
