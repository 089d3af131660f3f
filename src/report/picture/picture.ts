import { element, type Markup, styleElement } from '../markup/markup.ts';
import { PICTURE_WIDTH } from './picture-size.ts';
import { PICTURE_STYLE } from './picture-style.ts';

/** Rows of the numbers behind a picture. */
export interface DataTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A picture with the words and the numbers that say the same. */
export interface Picture {
  /** Unique on its page: small letters, digits and dashes. */
  readonly id: string;
  readonly title: string;
  /** One line: what is to be seen. */
  readonly reading: string;
  readonly height: number;
  readonly marks: readonly Markup[];
  readonly table: DataTable;
}

/** The picture in a page that holds `PICTURE_STYLE`; readers of screens hear its title and its reading. */
export function pictureSvg(picture: Picture): Markup {
  return svg(picture, null);
}

/** The picture as a file of its own (SVG 2, XML 1.0), light or dark as the reader's system is. */
export function pictureFile(picture: Picture): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg(picture, styleElement(PICTURE_STYLE))}\n`;
}

function svg({ id, title, reading, height, marks }: Picture, style: Markup | null): Markup {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${PICTURE_WIDTH} ${height}`,
      class: 'picture',
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-reading`,
    },
    element('title', { id: `${id}-title` }, title),
    element('desc', { id: `${id}-reading` }, reading),
    style,
    element('rect', { class: 'ground', width: PICTURE_WIDTH, height }),
    ...marks,
  );
}
