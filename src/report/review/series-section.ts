import { chartReading } from '../../consistency/weeks/chart-reading.ts';
import { headline, lastDaySentence, trendSentence } from '../../consistency/weeks/headline.ts';
import { practiceSentences } from '../../consistency/weeks/practice-sentences.ts';
import { element, type Markup } from '../markup/markup.ts';
import { figureHtml } from '../page/figure-html.ts';
import { paragraph } from '../page/page-html.ts';
import { tableHtml } from '../page/table-html.ts';
import { dayTable } from './day-rows.ts';
import type { SeriesReview } from './practice-review.ts';
import { seriesPictures } from './series-pictures.ts';

/** A series over the weeks: whether the foot gets better first, then the pictures, then what else is known. */
export function seriesSection(review: SeriesReview, id: string, practiceId: number | null): Markup {
  const { progress, spread } = review;
  const pictures = seriesPictures(review, id, practiceId);
  const has = (name: string): boolean => pictures.some((picture) => picture.id === `${id}-${name}`);
  const lines = [
    ...(has('weeks') ? [] : [trendSentence(progress)]),
    ...(has('limits') ? [] : [`Control chart: ${chartReading(progress.chart)}`]),
    ...(spread?.kind === 'none' ? [`Spread along the target: ${spread.reason}.`] : []),
    ...practiceSentences(progress),
  ];
  return element(
    'section',
    { 'aria-labelledby': id },
    element('h2', { id }, element('bdi', {}, seriesHeading(review))),
    element('p', { class: 'lead' }, `${headline(progress)} ${lastDaySentence(progress)}`),
    element('div', { class: 'figures' }, pictures.map(figureHtml)),
    lines.map(paragraph),
    element(
      'details',
      {},
      element('summary', {}, 'Days'),
      tableHtml(dayTable(progress.days), 'Days; nothing compares across what is new'),
    ),
  );
}

/** For example `Over weeks: hairpin, left foot`. */
export function seriesHeading({ progress }: SeriesReview): string {
  const { targetId, driver, foot, condition, source } = progress;
  const how = [`${foot} foot`, condition, source === 'hid' ? null : source];
  return `Over weeks: ${[targetId, driver, ...how].filter((word) => word !== null).join(', ')}`;
}
