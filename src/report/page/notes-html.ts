import { element, type Markup } from '../markup/markup.ts';
import type { ReviewNote } from '../review/practice-review.ts';
import { isolated } from './page-html.ts';

/** Notes in the order in which they were written; null without any. */
export function notesHtml(notes: readonly ReviewNote[]): Markup | null {
  if (notes.length === 0) return null;
  return element(
    'section',
    {},
    element('h2', { id: 'notes' }, 'Notes'),
    element('ul', { class: 'notes' }, notes.map(noteHtml)),
  );
}

function noteHtml({ at, about, text }: ReviewNote): Markup {
  const place = about === '' ? at : `${at}, ${about}`;
  return element(
    'li',
    {},
    element('span', { class: 'quiet' }, isolated(place), ': '),
    text === '' ? 'marked, without words yet' : isolated(text),
  );
}
