import type { EditEffect, EditMessage } from './edit-message.ts';
import { type EditModel, editedText } from './edit-model.ts';

type Answered = readonly [EditModel, readonly EditEffect[]];

/** What saving and open questions make of a message; null where it is none of their business. */
export function answered(model: EditModel, message: EditMessage): Answered | null {
  switch (message.kind) {
    case 'saved':
      return afterSaving(model, message);
    case 'not-saved':
      return [{ ...model, question: null, said: { kind: 'refused', words: message.why } }, []];
    case 'changed-on-disk': {
      const { beside, quit } = message;
      return [{ ...model, question: { kind: 'save-beside', path: beside, thenQuit: quit } }, []];
    }
    default:
      return model.question === null ? null : answerOf(model, message);
  }
}

function afterSaving(
  model: EditModel,
  { text, path, quit }: Extract<EditMessage, { readonly kind: 'saved' }>,
): Answered {
  const said = { kind: 'done', words: `Saved to ${path}.` } as const;
  return [{ ...model, saved: text, question: null, said }, quit ? [{ kind: 'quit' }] : []];
}

/** Esc goes on without an answer, but for what an earlier run left: that is kept until it is answered. */
function answerOf(model: EditModel, { kind }: EditMessage): Answered {
  const open = { ...model, question: null, said: null };
  const { question, now } = model;
  if (question?.kind === 'restore') {
    if (kind === 'yes') return [restored(open, question.text), []];
    if (kind === 'quit') return [model, [{ kind: 'quit' }]];
    return kind === 'no' ? [open, [{ kind: 'drop-kept' }]] : [model, []];
  }
  if (kind === 'close') return [open, []];
  if (question?.kind === 'quit') {
    if (kind === 'save' || kind === 'yes')
      return [open, [{ kind: 'write', text: now.text, path: null, thenQuit: true }]];
    return kind === 'quit' || kind === 'no' ? [open, [{ kind: 'quit' }]] : [model, []];
  }
  if (question?.kind !== 'save-beside') return [open, []];
  if (kind === 'no') return [open, []];
  const { path, thenQuit } = question;
  return kind === 'yes' ? [open, [{ kind: 'write', text: now.text, path, thenQuit }]] : [model, []];
}

function restored(model: EditModel, text: string): EditModel {
  const kept = editedText(text, model.fileName);
  if (typeof kept === 'string')
    return { ...model, said: { kind: 'refused', words: `They cannot be used: ${kept}` } };
  return {
    ...model,
    now: kept,
    undo: [{ text: model.now.text, selected: model.selected }],
    said: { kind: 'done', words: 'Restored: u goes back to the file, s saves.' },
  };
}
