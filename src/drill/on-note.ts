import type { DrillModel } from './drill-model.ts';
import { type NoteKey, typed } from './note-typing.ts';
import { wholeRating } from './self-rating.ts';
import type { Step } from './stages.ts';
import { NO_REP_TO_MARK, noteKept, repMarked } from './words.ts';

/** Marks the last rep that was driven to its end; while the next is under way nothing comes on the screen. */
export function markRep(model: DrillModel, isUnderWay: boolean): Step {
  const { attempts: rep } = model;
  if (rep === 0) return [{ ...model, message: NO_REP_TO_MARK }, []];
  const marked = isUnderWay ? model : { ...model, message: repMarked(rep) };
  return [marked, [{ kind: 'note', rep }]];
}

/**
 * The key of the keyboard: marks the last rep, and where nothing is being driven lets the driver put it into words. The
 * next rep waits for that. Hands on a wheel have no keyboard, so a wheel button only marks.
 */
export function onNoteKey(model: DrillModel, isUnderWay: boolean): Step {
  const [marked, effects] = markRep(model, isUnderWay);
  if (model.attempts === 0 || !canType(model)) return [marked, effects];
  return [{ ...marked, note: { rep: model.attempts, text: '' } }, effects];
}

/** While the answer to a question is awaited its keys are no letters. */
function canType({ stage, rating, atS }: DrillModel): boolean {
  if (stage.kind === 'paused' || stage.kind === 'summary') return true;
  if (stage.kind !== 'after') return false;
  return rating === null || wholeRating(rating) !== null || atS >= stage.revealAtS;
}

/** A key while a note is typed; any other time it does nothing. */
export function onTyped(model: DrillModel, key: NoteKey): Step {
  const { note } = model;
  if (note === null) return [model, []];
  switch (key.kind) {
    case 'character':
    case 'erase':
      return [{ ...model, note: { ...note, text: typed(note.text, key) } }, []];
    case 'done':
      return closeNote(model);
    case 'skip':
      return [{ ...model, note: null }, []];
  }
}

/** The note as far as it goes is kept: what is typed is not lost to a wheel button or a device. */
export function closeNote(model: DrillModel): Step {
  const { note } = model;
  if (note === null) return [model, []];
  const text = note.text.trim();
  const closed = { ...model, note: null };
  if (text === '') return [closed, []];
  return [{ ...closed, message: noteKept(note.rep) }, [{ kind: 'note-text', rep: note.rep, text }]];
}
