import { fragment } from '../markup/markup.ts';
import { notesHtml } from '../page/notes-html.ts';
import { pageHtml } from '../page/page-html.ts';
import type { Picture } from '../picture/picture.ts';
import type { WeeksReview } from './practice-review.ts';
import { seriesPictures } from './series-pictures.ts';
import { seriesSection } from './series-section.ts';

/** The review of some weeks as a page of its own. */
export function weeksPage({ today, weeks, series, notes, cautions }: WeeksReview): string {
  return pageHtml({
    title: weeks === 1 ? `The week up to ${today}` : `${weeks} weeks up to ${today}`,
    subtitle: [
      'Medians are given from 8 reps on, spreads from 10, a week needs 5. Nothing is averaged across a change of conditions.',
    ],
    main: fragment(
      series.map((one, i) => seriesSection(one, seriesId(i), null)),
      notesHtml(notes),
    ),
    cautions,
    style: '',
  });
}

/** All pictures of the page. */
export function weeksPictures({ series }: WeeksReview): Picture[] {
  return series.flatMap((one, i) => seriesPictures(one, seriesId(i), null));
}

const seriesId = (i: number): string => `series-${i + 1}`;
