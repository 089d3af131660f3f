import { element, fragment, type Markup } from '../markup/markup.ts';
import { notesHtml } from '../page/notes-html.ts';
import { pageHtml } from '../page/page-html.ts';
import { pickStyle } from '../page/pick-style.ts';
import type { Picture } from '../picture/picture.ts';
import { blockPictures } from './block-pictures.ts';
import { blockSection } from './block-section.ts';
import { blockHeading } from './block-title.ts';
import type { PracticeReview } from './practice-review.ts';
import { seriesPictures } from './series-pictures.ts';
import { seriesHeading, seriesSection } from './series-section.ts';

/** The review of one practice as a page of its own. */
export function practicePage(review: PracticeReview): string {
  const { practice, blocks, series, notes, cautions } = review;
  const numbers = blocks.flatMap(({ reps }) => reps.map(({ number }) => number));
  return pageHtml({
    title: `Practice ${practice.number}, ${practice.startedAt}`,
    subtitle: [[practice.driver, ...practice.conditions].join(', ')],
    main: fragment(
      contents(review),
      blocks.map((block, i) => blockSection(block, blockId(i))),
      series.map((one, i) => seriesSection(one, seriesId(i), practice.number)),
      notesHtml(notes),
    ),
    cautions,
    style: pickStyle(Math.max(0, ...numbers)),
  });
}

/** All pictures of the page. */
export function practicePictures({ practice, blocks, series }: PracticeReview): Picture[] {
  return [
    ...blocks.flatMap((block, i) => blockPictures(block, blockId(i))),
    ...series.flatMap((one, i) => seriesPictures(one, seriesId(i), practice.number)),
  ];
}

const blockId = (i: number): string => `block-${i + 1}`;
const seriesId = (i: number): string => `series-${i + 1}`;

/** Links to the parts, where there are several. */
function contents({ blocks, series, notes }: PracticeReview): Markup {
  const link = (id: string, text: string): Markup =>
    element('li', {}, element('a', { href: `#${id}` }, element('bdi', {}, text)));
  return element(
    'nav',
    { 'aria-label': 'On this page' },
    element(
      'ul',
      {},
      blocks.map((block, i) => link(blockId(i), blockHeading(block))),
      series.map((one, i) => link(seriesId(i), seriesHeading(one))),
      notes.length === 0 ? null : link('notes', 'Notes'),
    ),
  );
}
