import type { ReleaseShape } from '../target/release-shape.ts';
import type { ShapedKnot, ShapeWish } from '../target/shaped-file.ts';
import type { CommandInput, OptionSpec } from './command.ts';
import { misuseOf } from './misuse-of.ts';
import { textOption } from './option-value.ts';

const misuse = misuseOf('target shape');

type Values = CommandInput['values'];

/** Shapes of the release and the options that belong to one of them alone. */
const SHAPES: Readonly<Record<ReleaseShape['kind'], readonly string[]>> = {
  linear: [],
  'power-law': ['exponent'],
  exponential: ['e-folds'],
  'raised-cosine': [],
  'two-stage': ['knot'],
  knots: ['knot'],
};
const OF_SHAPES = ['exponent', 'e-folds', 'knot'];
const OF_DISTANCE = ['brake-off-m', 'entry-kmh', 'slowest-kmh'];

/** Lengths and places come in seconds, or in metres together with `--brake-point-m`. */
export const SHAPE_OPTIONS: Readonly<Record<string, OptionSpec>> = {
  peak: { type: 'string', value: 'LEVEL', help: 'level of the peak, 0.1 to 1' },
  'hit-s': { type: 'string', value: 'S', help: '10 to 90 % of the peak on the way up; or --hit-m' },
  'hold-s': { type: 'string', value: 'S', help: 'plateau (default 0); or --hold-m' },
  'bleed-s': { type: 'string', value: 'S', help: 'straight-line bleed behind it; or --bleed-m' },
  'bleed-to': { type: 'string', value: 'LEVEL', help: 'level at the end of the bleed' },
  'release-s': { type: 'string', value: 'S', help: 'start of release to brake off' },
  shape: { type: 'string', value: Object.keys(SHAPES).join('|'), help: 'default linear' },
  exponent: { type: 'string', value: 'X', help: 'of power-law; above 1 quick first' },
  'e-folds': { type: 'string', value: 'X', help: 'of exponential' },
  knot: {
    type: 'string',
    multiple: true,
    value: 'PLACE,LEVEL',
    help: 'of knots (several) and two-stage (one): 1.15,0.3',
  },
  'turn-in-s': { type: 'string', value: 'S', help: 'after the start of the rise; or --turn-in-m' },
  'apex-s': { type: 'string', value: 'S', help: 'after the start of the rise; or --apex-m' },
  'steering-deg': { type: 'string', value: 'DEG', help: 'at the apex, left positive' },
  'brake-point-m': {
    type: 'string',
    value: 'M',
    help: 'a target over distance to the slowest point',
  },
  'entry-kmh': { type: 'string', value: 'V', help: 'over distance: speed at the brake point' },
  'slowest-kmh': { type: 'string', value: 'V', help: 'over distance: slowest speed' },
  'brake-off-m': { type: 'string', value: 'M', help: 'over distance (default 0)' },
  'hit-m': { type: 'string', value: 'M', help: 'over distance' },
  'hold-m': { type: 'string', value: 'M', help: 'over distance' },
  'bleed-m': { type: 'string', value: 'M', help: 'over distance' },
  'turn-in-m': { type: 'string', value: 'M', help: 'over distance' },
  'apex-m': { type: 'string', value: 'M', help: 'over distance' },
  name: { type: 'string', value: 'TEXT', help: 'name of the target (default My corner)' },
  'corner-type': { type: 'string', value: 'TEXT', help: 'for example hairpin (default corner)' },
  advice: { type: 'string', value: 'TEXT', help: 'one or two sentences for the driver' },
};

/** What the options say. @throws Problem (exit code 2) for what is missing, no number, or belongs elsewhere */
export function shapeWish(values: Values): ShapeWish {
  const unit = values['brake-point-m'] === undefined ? 's' : 'm';
  refuseOther(values, unit);
  const shape = shapeOf(values);
  const number = (name: string): number | null => numberOf(values, name);
  const needed = (name: string): number => number(name) ?? missing(name);
  const bleed = number(`bleed-${unit}`);
  return {
    name: textOption(values.name) ?? 'My corner',
    cornerType: textOption(values['corner-type']) ?? 'corner',
    advice: textOption(values.advice),
    distance:
      unit === 's'
        ? null
        : {
            brakePointM: needed('brake-point-m'),
            brakeOffM: number('brake-off-m') ?? 0,
            entryKmh: needed('entry-kmh'),
            slowestKmh: needed('slowest-kmh'),
          },
    peakLevel: needed('peak'),
    hit: needed(`hit-${unit}`),
    hold: number(`hold-${unit}`) ?? 0,
    bleed: bleed === null ? noBleed(values, unit) : { length: bleed, toLevel: needed('bleed-to') },
    release: unit === 's' ? needed('release-s') : null,
    shape,
    exponent: shape === 'power-law' ? needed('exponent') : null,
    eFolds: shape === 'exponential' ? needed('e-folds') : null,
    knots: knotsOf(values, shape),
    turnIn: number(`turn-in-${unit}`),
    apex: number(`apex-${unit}`),
    steeringDeg: number('steering-deg'),
  };
}

function shapeOf({ shape }: Values): ReleaseShape['kind'] {
  const wanted = textOption(shape) ?? 'linear';
  const found = Object.keys(SHAPES).find((name) => name === wanted);
  if (found !== undefined) return found as ReleaseShape['kind'];
  throw misuse(
    `there is no shape ${JSON.stringify(wanted)}`,
    `Use ${Object.keys(SHAPES).join(', ')}.`,
  );
}

/** Seconds and metres do not mix, and a shape takes its own options only. */
function refuseOther(values: Values, unit: 's' | 'm'): void {
  const given = Object.keys(values).filter((name) => values[name] !== undefined);
  const wrongUnit = given.find((name) =>
    unit === 's' ? name.endsWith('-m') || OF_DISTANCE.includes(name) : name.endsWith('-s'),
  );
  if (wrongUnit !== undefined)
    throw misuse(
      `--${wrongUnit} belongs to a target over ${unit === 's' ? 'distance' : 'time'}`,
      unit === 's' ? 'Add --brake-point-m, or say it in seconds.' : 'Say it in metres.',
    );
  const own = SHAPES[shapeOf(values)];
  const other = given.find((name) => OF_SHAPES.includes(name) && !own.includes(name));
  if (other !== undefined)
    throw misuse(`--${other} belongs to another shape`, `Leave it out, or give another --shape.`);
}

function noBleed(values: Values, unit: string): null {
  if (values['bleed-to'] === undefined) return null;
  return missing(`bleed-${unit}`);
}

function knotsOf(values: Values, shape: ReleaseShape['kind']): readonly ShapedKnot[] {
  const { knot } = values;
  const texts = Array.isArray(knot) ? knot : [];
  if (SHAPES[shape].includes('knot') && texts.length === 0) return missing('knot');
  if (shape === 'two-stage' && texts.length > 1)
    throw misuse('a two-stage release has one corner', 'Give one --knot, or --shape knots.');
  return texts.map((text: string) => {
    const [at, level, ...more] = text.split(',').map(Number);
    if (more.length > 0 || !Number.isFinite(at) || !Number.isFinite(level))
      throw misuse(`--knot is ${JSON.stringify(text)}`, 'Give a place and a level: 1.15,0.3.');
    return { at: at!, level: level! };
  });
}

function numberOf(values: Values, name: string): number | null {
  const text = textOption(values[name]);
  if (text === null) return null;
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (Number.isFinite(value)) return value;
  throw misuse(`--${name} is ${JSON.stringify(text)}`, 'Give a number, with a point and no unit.');
}

function missing(name: string): never {
  throw misuse(`--${name} is missing`, `Add --${name}; \`ebbline target shape --help\` says more.`);
}
