import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

/** `KIND list`: an object for each file, under the name of their folder. */
export function profileListAnswer(folder: string, fields: AnswerFields): AnswerSchema {
  const entry = json.object('One of them', {
    ...fields,
    origin: json.oneOfWords('where it lies', 'own', 'bundled'),
    file: json.text('path of the file'),
  });
  return json.object(`What can be named by id in ${folder}`, {
    [folder]: json.list('in the order of their ids', entry),
  });
}

/** `KIND check`. */
export const PROFILE_CHECK_ANSWER: AnswerSchema = json.object(
  'What is wrong with the files named',
  {
    files: json.list(
      'in the order in which they were named',
      json.object('One file', {
        file: json.text('path as it was given'),
        ok: json.flag('no problem was found'),
        problems: json.list(
          'in the order of their places',
          json.object('One problem', {
            ...json.wholes({ line: 'line, from 1', column: 'column, from 1' }),
            what: json.text('what is wrong'),
            next: json.text('what to do'),
          }),
        ),
        warnings: json.texts('what is allowed and still hardly meant'),
      }),
    ),
  },
);
