import { flag, list, object, oneOfWords, text, texts, wholes } from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

/** `KIND list`: an object for each file, under the name of their folder. */
export function profileListAnswer(folder: string, fields: AnswerFields): AnswerSchema {
  const entry = object('One of them', {
    ...fields,
    origin: oneOfWords('where it lies', 'own', 'bundled'),
    file: text('path of the file'),
  });
  return object(`What can be named by id in ${folder}`, {
    [folder]: list('in the order of their ids', entry),
  });
}

/** `KIND check`. */
export const PROFILE_CHECK_ANSWER: AnswerSchema = object('What is wrong with the files named', {
  files: list(
    'in the order in which they were named',
    object('One file', {
      file: text('path as it was given'),
      ok: flag('no problem was found'),
      problems: list(
        'in the order of their places',
        object('One problem', {
          ...wholes({ line: 'line, from 1', column: 'column, from 1' }),
          what: text('what is wrong'),
          next: text('what to do'),
        }),
      ),
      warnings: texts('what is allowed and still hardly meant'),
    }),
  ),
});
