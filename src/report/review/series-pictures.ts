import { trendSentence } from '../../consistency/weeks/headline.ts';
import type { PracticeSpread } from '../../drill/diagnosis/spread-curve.ts';
import type { TextUnits } from '../../unit-text.ts';
import { type Along, alongRoad, alongTime } from '../picture/block-axis.ts';
import { controlPicture } from '../picture/control-picture.ts';
import type { Picture } from '../picture/picture.ts';
import { spreadPicture } from '../picture/spread-picture.ts';
import { weekPicture } from '../picture/week-picture.ts';
import type { SeriesReview } from './practice-review.ts';

/** The pictures of a series over the weeks; as many as there is data for. */
export function seriesPictures(
  { progress, spread, units }: SeriesReview,
  id: string,
  practiceId: number | null,
): Picture[] {
  const { targetId, weeks, chart, since } = progress;
  const control = controlPicture({
    id: `${id}-limits`,
    title: `Practices against their limits since ${since}, ${targetId}`,
    chart,
    practiceId,
  });
  const week = weekPicture({
    id: `${id}-weeks`,
    title: `Release error by week, ${targetId}`,
    reading: trendSentence(progress),
    weeks,
  });
  return [
    ...(week === null ? [] : [week]),
    ...(control === null ? [] : [control]),
    ...(spread === null || spread.kind === 'none'
      ? []
      : [
          spreadPicture({
            id: `${id}-spread`,
            title: `Spread along the target on ${spread.curve.day}, ${targetId}`,
            curve: spread.curve,
            along: alongOf(spread.curve, units),
          }),
        ]),
  ];
}

function alongOf({ grid, placesM }: PracticeSpread, units: TextUnits): Along {
  return placesM === null ? alongTime(grid) : alongRoad(placesM, units);
}
