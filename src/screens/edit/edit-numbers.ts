import type { CurvePoint } from '../../target/edit/curve-point.ts';
import { isChanged, selectedPoint } from '../../target/edit/edit-model.ts';
import { placeStep, valueStep } from '../../target/edit/edit-steps.ts';
import { keyNumbers } from '../../target/key-numbers.ts';
import { overTime } from '../../target/over-time.ts';
import type { Target } from '../../target/target.ts';
import { distanceText } from '../../target/unit-text.ts';
import { percentText, tidy, wholePercentText } from '../number-text.ts';
import { carLines } from './car-lines.ts';
import type { EditView } from './edit-view.ts';

/** A line of the side panel. */
export interface NumberLine {
  readonly text: string;
  readonly pen: 'strong' | 'text' | 'quiet' | 'driver';
}

const NAME_COLS = 14;

/** The chosen point, the numbers of the whole curve, and what the car does with it. */
export function editNumbers(view: EditView, cols: number): readonly NumberLine[] {
  return [
    ...pointLines(view),
    { text: '', pen: 'text' },
    ...curveLines(view),
    ...(view.car === null
      ? []
      : [{ text: '', pen: 'text' } as const, ...carLines(view, view.car, cols)]),
  ];
}

function pointLines(view: EditView): NumberLine[] {
  const { model } = view;
  const point = selectedPoint(model);
  const { file } = model.now;
  const place = placeText(placeStep(file, model.step), view);
  const value = valueText(point, valueStep(point, model.step), view.fullScaleBar);
  return [
    { text: point.name, pen: 'driver' },
    ...(point.at === null ? [] : [line('at', placeText(point.at, view))]),
    ...(point.value === null
      ? []
      : [line(nameOfValue(point), valueText(point, point.value, view.fullScaleBar))]),
    {
      text: `step ${[point.at === null ? null : place, point.value === null ? null : value]
        .filter((text) => text !== null)
        .join(', ')}`,
      pen: 'quiet',
    },
  ];
}

function nameOfValue({ kind }: CurvePoint): string {
  return { level: 'level', share: 'of the level', number: 'value' }[kind];
}

function valueText({ kind }: CurvePoint, value: number, fullScaleBar: number | null): string {
  if (kind === 'number') return tidy(value, 2);
  return kind === 'share' ? percentText(value) : levelText(value, fullScaleBar);
}

function levelText(level: number, fullScaleBar: number | null): string {
  const bar = fullScaleBar === null ? '' : `  ${tidy(level * fullScaleBar, 1)} bar`;
  return `${percentText(level)}${bar}`;
}

/** A place or a length on the target's own axis. */
function placeText(at: number, { model, units }: EditView): string {
  if (model.now.target.domain === 'time') return `${tidy(at, 3)} s`;
  return units === 'imperial' ? distanceText(at, units) : `${tidy(at, 1)} m`;
}

function curveLines(view: EditView): NumberLine[] {
  const { target } = view.model.now;
  const numbers = keyNumbers(target);
  const rate = (perS: number): string => rateText(perS, view.fullScaleBar);
  const { marks, corridorAt } = target;
  return [
    line('peak', levelText(target.peakLevel, view.fullScaleBar)),
    line('hit', `${tidy(numbers.riseS, 3)} s, 10-90 %`),
    line('release from', placeText(marks.startOfRelease, view)),
    line('brake off', placeText(marks.brakeOff, view)),
    line('release', `${tidy(numbers.releaseS, 2)} s`),
    line('  mean', rate(numbers.meanReleaseRate)),
    line('  steepest', rate(numbers.steepestReleaseRate)),
    ...(numbers.overlap === null
      ? []
      : [line('trail braking', `${wholePercentText(numbers.overlap)} of time`)]),
    line('corridor', `${percentText(corridorAt(marks.peak))} at peak`),
    ...slowingLines(target, view),
  ];
}

function slowingLines(target: Target, { units }: EditView): NumberLine[] {
  if (target.domain === 'time') return [];
  const timed = overTime(target);
  const seconds = `${tidy(timed.marks.brakeOff, 2)} s`;
  return [
    line('lasts', `${seconds}, ${distanceText(target.marks.rise - target.marks.brakeOff, units)}`),
  ];
}

function rateText(perS: number, fullScaleBar: number | null): string {
  const bar = fullScaleBar === null ? '' : ` ${tidy(perS * fullScaleBar, 0)} bar/s`;
  return `${tidy(100 * perS, 0)} %/s${bar}`;
}

function line(name: string, value: string): NumberLine {
  return { text: `${name.padEnd(NAME_COLS)}${value}`, pen: 'text' };
}

/** How the file stands to what is on the screen. */
export function fileState(view: EditView): string {
  if (isChanged(view.model)) return 'not saved';
  return view.model.saved === null ? 'new, not written' : 'saved';
}
