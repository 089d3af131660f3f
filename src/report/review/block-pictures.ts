import type { spreadReading } from '../../drill/diagnosis/spread-curve.ts';
import type { BlockSummary } from '../../drill/drill-view.ts';
import { tenths } from '../../number-text.ts';
import { type Along, alongRoad } from '../picture/block-axis.ts';
import { couplingPicture } from '../picture/coupling-picture.ts';
import { overlayPicture } from '../picture/overlay-picture.ts';
import type { Picture } from '../picture/picture.ts';
import { spreadPicture } from '../picture/spread-picture.ts';
import { blockTitle } from './block-title.ts';
import type { BlockReview, DrawnBlock } from './practice-review.ts';

/** The pictures of a block: its reps over each other, their spread, brake against wheel; as many as there is data for. */
export function blockPictures(review: BlockReview, id: string): Picture[] {
  if (review.drawn.kind !== 'drawn') return [];
  const { summary, target } = review.drawn;
  const along = alongIn(review.drawn);
  const { overlay } = summary.diagnosis;
  const title = blockTitle(review);
  const curve = curveOf(review.drawn);
  const coupling = couplingPicture({
    id: `${id}-wheel`,
    title: `Brake against wheel, ${title}`,
    reps: review.reps.map(({ number, coupling }) => ({ number, coupling })),
    target,
  });
  return [
    overlayPicture({
      id: `${id}-reps`,
      title: `Reps over each other, ${title}`,
      reading: overlayReading(summary),
      overlay,
      along,
      numbers: review.reps.flatMap(({ number, isDrawn }) => (isDrawn ? [number] : [])),
    }),
    ...(curve === null
      ? []
      : [spreadPicture({ id: `${id}-spread`, title: `Spread, ${title}`, curve, along })]),
    ...(coupling === null ? [] : [coupling]),
  ];
}

function alongIn({ along, units }: DrawnBlock): Along {
  return along.unit === 'm' ? alongRoad(along.at, units) : along;
}

function curveOf({ summary, along }: DrawnBlock): Parameters<typeof spreadReading>[0] | null {
  const { spread, grid, reps } = summary.diagnosis.overlay;
  const placesM = along.unit === 'm' ? along.at : null;
  return spread === null ? null : { day: '', reps: reps.length, grid, spread, placesM };
}

function overlayReading({ averageErrorLevel, spreadLevel, diagnosis }: BlockSummary): string {
  const count = diagnosis.overlay.reps.length;
  if (averageErrorLevel === null) return 'no rep could be measured; the target alone is drawn.';
  const side = averageErrorLevel < 0 ? 'light' : 'heavy';
  const spread =
    spreadLevel === null
      ? 'their spread is known from three reps on'
      : `they differ from each other by ${tenths(spreadLevel)} %`;
  const reps = count === 1 ? 'one rep is' : `${count} reps are`;
  return `over the release ${reps} on average ${tenths(Math.abs(averageErrorLevel))} % of full scale too ${side}; ${spread}.`;
}
