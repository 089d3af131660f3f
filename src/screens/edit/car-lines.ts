import { fixed, percentText } from '../../number-text.ts';
import { gripSpans, meanUse } from '../../target/derive/grip-spans.ts';
import type { Target } from '../../target/target.ts';
import { speedText } from '../../unit-text.ts';
import { fitText } from '../write-text.ts';
import type { NumberLine } from './edit-numbers.ts';
import type { EditedCar, EditView } from './edit-view.ts';

const MOST_SPANS = 2;
/** A driver feels a difference of this size. */
const FELT_MPS = 0.8;

/** What the car does with the curve, in a few lines. */
export function carLines(view: EditView, { name, driven }: EditedCar, cols: number): NumberLine[] {
  const { target } = view.model.now;
  const { straight, turning } = meanUse(driven.places, isPastPeak(target));
  const used = (part: string, use: number | null): NumberLine[] =>
    use === null ? [] : [{ text: `${part.padEnd(12)}${percentText(use)} of grip`, pen: 'text' }];
  const spans = gripSpans(driven.places);
  return [
    { text: fitText(name, cols), pen: 'strong' },
    arrival(view, driven),
    ...used('straight', straight),
    ...used('turning', turning),
    ...spans.slice(0, MOST_SPANS).map((span): NumberLine => {
      const more = percentText(span.most - 1).replace(' %', '%');
      const where = `${placed(span.from, view)}-${placed(span.to, view)} ${unit(view)}`;
      return { text: fitText(`${span.axle} ${more} over ${where}`, cols), pen: 'driver' };
    }),
    ...(spans.length > MOST_SPANS
      ? [{ text: `and ${spans.length - MOST_SPANS} more places`, pen: 'driver' } as const]
      : []),
  ];
}

function isPastPeak({ domain, marks }: Target): (at: number) => boolean {
  return (at) => (domain === 'time' ? at > marks.peak : at < marks.peak);
}

function placed(at: number, { model }: EditView): string {
  return fixed(at, model.now.target.domain === 'time' ? 2 : 0);
}

function unit({ model }: EditView): string {
  return model.now.target.domain === 'time' ? 's' : 'm';
}

function arrival({ units }: EditView, { arrivesMps, carriesMps }: EditedCar['driven']): NumberLine {
  if (arrivesMps === null) return { text: 'stops before the corner', pen: 'driver' };
  const off = Math.abs(arrivesMps - carriesMps) > FELT_MPS;
  const text = `${'arrives'.padEnd(12)}${speedText(arrivesMps, units)}, can ${speedText(carriesMps, units)}`;
  return { text: text.replace(/ (km\/h|mph), can/, ', can'), pen: off ? 'driver' : 'text' };
}
