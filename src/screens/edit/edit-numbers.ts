import { fixed, percentText } from '../../number-text.ts';
import type { CurvePoint } from '../../target/edit/curve-point.ts';
import { isChanged, selectedPoint } from '../../target/edit/edit-model.ts';
import { placeStep, valueStep } from '../../target/edit/edit-steps.ts';
import { keyNumbers } from '../../target/key-numbers.ts';
import { overTime } from '../../target/over-time.ts';
import type { Target } from '../../target/target.ts';
import { pascalsFromBar, psiFromPascals } from '../../units.ts';
import { carLines } from './car-lines.ts';
import type { EditView } from './edit-view.ts';

/** A line of the side panel. */
export interface NumberLine {
  readonly text: string;
  readonly pen: 'strong' | 'text' | 'quiet' | 'driver';
}

const NAME_COLS = 12;

/** The chosen point, the numbers of the whole curve, and what the car does with it. */
export function editNumbers(view: EditView, cols: number): readonly NumberLine[] {
  const { car } = view;
  return [
    ...pointLines(view),
    ...curveLines(view),
    ...(car === null ? [] : carLines(view, car, cols)),
  ];
}

function pointLines(view: EditView): NumberLine[] {
  const point = selectedPoint(view.model);
  return [
    { text: point.name, pen: 'driver' },
    line('at', point.at === null ? 'no place' : placeText(point.at, view)),
    line(
      nameOfValue(point),
      point.value === null ? 'none of its own' : valueText(point, point.value, view),
    ),
  ];
}

/** How far one key press moves the chosen point. */
export function stepText(view: EditView): string {
  const { model } = view;
  const point = selectedPoint(model);
  const steps = [
    ...(point.at === null ? [] : [placeText(placeStep(model.now.file, model.step), view)]),
    ...(point.value === null
      ? []
      : [valueText(point, valueStep(point, model.step), { ...view, fullScaleBar: null })]),
  ];
  return `step ${steps.join(', ')}`;
}

function nameOfValue({ kind }: CurvePoint): string {
  return { level: 'level', share: 'of the level', number: 'value' }[kind];
}

function valueText({ kind }: CurvePoint, value: number, view: Pressure): string {
  if (kind === 'number') return fixed(value, 2);
  return kind === 'share' ? percentText(value, 1) : levelText(value, view);
}

type Pressure = Pick<EditView, 'fullScaleBar' | 'units'>;

function levelText(level: number, view: Pressure): string {
  const pressure = pressureAt(level, view);
  return pressure === null ? percentText(level, 1) : `${percentText(level, 1)}  ${pressure}`;
}

/** Front line pressure of a level, or of a rate of levels; null where nothing says what full scale is. */
function pressureAt(level: number, { fullScaleBar, units }: Pressure): string | null {
  if (fullScaleBar === null) return null;
  const bar = level * fullScaleBar;
  return units === 'metric'
    ? `${fixed(bar, 1)} bar`
    : `${fixed(psiFromPascals(pascalsFromBar(bar)), 0)} psi`;
}

/** A place or a length on the target's own axis, in the file's unit, which is what a key changes. */
function placeText(at: number, { model }: EditView): string {
  return model.now.target.domain === 'time' ? `${fixed(at, 3)} s` : `${fixed(at, 1)} m`;
}

function curveLines(view: EditView): NumberLine[] {
  const { target } = view.model.now;
  const numbers = keyNumbers(target);
  const rate = (perS: number): string => rateText(perS, view);
  const { marks, corridorAt } = target;
  return [
    line('peak', levelText(target.peakLevel, view)),
    line('hit', `${fixed(numbers.riseS, 3)} s, 10-90 %`),
    line('release at', placeText(marks.startOfRelease, view)),
    line('brake off', placeText(marks.brakeOff, view)),
    line('release', `${fixed(numbers.releaseS, 2)} s`),
    line('  mean', rate(numbers.meanReleaseRate)),
    line('  steepest', rate(numbers.steepestReleaseRate)),
    ...(numbers.overlap === null
      ? []
      : [line('trailing', `${percentText(numbers.overlap)} of time`)]),
    line('corridor', `${percentText(corridorAt(marks.peak), 1)} at peak`),
    ...slowingLines(target, overTime(target)),
  ];
}

function slowingLines({ domain, marks }: Target, timed: Target): NumberLine[] {
  if (domain === 'time') return [];
  const metres = fixed(marks.rise - marks.brakeOff, 1);
  return [line('lasts', `${fixed(timed.marks.brakeOff, 2)} s, ${metres} m`)];
}

function rateText(perS: number, view: Pressure): string {
  const pressure = pressureAt(perS, view)?.replace(/\.\d+ /, ' ');
  return `${fixed(100 * perS, 0)} %/s${pressure === undefined ? '' : ` ${pressure}/s`}`;
}

function line(name: string, value: string): NumberLine {
  return { text: `${name.padEnd(NAME_COLS)}${value}`, pen: 'text' };
}

/** How the file stands to what is on the screen. */
export function fileState(view: EditView): string {
  if (isChanged(view.model)) return 'not saved';
  return view.model.saved === null ? 'new, not written' : 'saved';
}
