import { element, type Markup } from '../markup/markup.ts';
import { type Picture, pictureSvg } from '../picture/picture.ts';
import { tableHtml } from './table-html.ts';

/** A picture, what it says in one line, and its numbers behind a fold. */
export function figureHtml(picture: Picture): Markup {
  const { title, reading, table } = picture;
  return element(
    'figure',
    {},
    pictureSvg(picture),
    element('figcaption', {}, element('b', {}, title, ': '), reading),
    element('details', {}, element('summary', {}, 'Numbers'), tableHtml(table, title)),
  );
}
