import { isChanged } from '../../target/edit/edit-model.ts';
import { trackWarnings } from '../../target/trackability.ts';
import type { EditView } from './edit-view.ts';

/** What is said below the picture, and how loudly. */
interface EditWords {
  readonly text: string;
  readonly pen: 'alert' | 'strong' | 'quiet';
}

/** An open question before what was last done or refused, and else what a foot cannot follow. */
export function editWords({ model }: EditView): EditWords | null {
  const { question, said } = model;
  switch (question?.kind) {
    case 'quit':
      return {
        text: 'Not saved yet: s saves and quits, q quits without, Esc goes on.',
        pen: 'alert',
      };
    case 'save-beside':
      return {
        text: `The file was changed by somebody else and is left: y saves as ${baseName(question.path)} beside it, n does not.`,
        pen: 'alert',
      };
    case 'restore':
      return {
        text: `Changes that were not saved last time are here${question.fileIsNewer ? ', older than the file' : ''}: y takes them up again, n drops them.`,
        pen: 'alert',
      };
    default:
  }
  if (said !== null) return { text: said.words, pen: said.kind === 'refused' ? 'alert' : 'strong' };
  const [warning] = trackWarnings(model.now.target);
  if (warning !== undefined) return { text: `Caution: ${warning}`, pen: 'strong' };
  if (isChanged(model)) return null;
  return {
    text: 'A starting point: approach it from the safe side, with an instructor.',
    pen: 'quiet',
  };
}

function baseName(path: string): string {
  return path.split(/[/\\]/).at(-1)!;
}
