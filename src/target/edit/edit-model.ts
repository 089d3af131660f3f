import { checkTarget } from '../read-target.ts';
import type { Target } from '../target.ts';
import type { TargetFile } from '../target-file.ts';
import { type CurvePoint, curvePoints } from './curve-point.ts';
import { FIRST_STEP } from './edit-steps.ts';

/** A target as its text says it. */
export interface EditedText {
  readonly text: string;
  readonly file: TargetFile;
  readonly target: Target;
}

/** Where undo goes back to. */
export interface EditPast {
  readonly text: string;
  readonly selected: string;
}

/** What has to be answered before anything else. */
type EditQuestion =
  /** There are changes that are not saved. */
  | { readonly kind: 'quit' }
  /** The file changed on disk meanwhile; it can be saved under this name instead. */
  | { readonly kind: 'save-beside'; readonly path: string; readonly thenQuit: boolean }
  /** Changes that an earlier run did not save. */
  | { readonly kind: 'restore'; readonly text: string; readonly fileIsNewer: boolean };

/** What was last done, or why it was not. */
interface EditWord {
  readonly kind: 'done' | 'refused';
  readonly words: string;
}

/** A target being edited. Its text is the truth, so that undo gives the same bytes. */
export interface EditModel {
  /** Names the target; its path may change with where it is saved. */
  readonly fileName: string;
  readonly now: EditedText;
  /** As last read or written; null where nothing was written yet. */
  readonly saved: string | null;
  readonly undo: readonly EditPast[];
  readonly redo: readonly EditPast[];
  /** Id of the chosen point. */
  readonly selected: string;
  /** Index of the step, 0 the finest. */
  readonly step: number;
  readonly said: EditWord | null;
  readonly question: EditQuestion | null;
  readonly help: boolean;
}

/** A text that reads as a target without problems, or the first of them in words. */
export function editedText(text: string, fileName: string): EditedText | string {
  const reading = checkTarget(text, fileName);
  if (reading.kind === 'refused') {
    const [first] = reading.problems;
    return `${first!.what}. ${first!.next}`;
  }
  return { text, file: reading.file, target: reading.value };
}

/**
 * Begins to edit a text.
 * @param saved false for a text that is not in the file yet, such as a copy of a bundled target
 */
export function startEdit(now: EditedText, fileName: string, saved: boolean): EditModel {
  return {
    fileName,
    now,
    saved: saved ? now.text : null,
    undo: [],
    redo: [],
    selected: curvePoints(now.file)[0]!.id,
    step: FIRST_STEP,
    said: null,
    question: null,
    help: false,
  };
}

export function isChanged({ now, saved, undo }: EditModel): boolean {
  return saved === null ? undo.length > 0 : now.text !== saved;
}

/** The chosen point; the first one where it is no more. */
export function selectedPoint({ now, selected }: EditModel): CurvePoint {
  const points = curvePoints(now.file);
  return points.find(({ id }) => id === selected) ?? points[0]!;
}
