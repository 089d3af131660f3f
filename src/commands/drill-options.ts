import { THEME_NAMES, type ThemeName } from '../drill/display/display-settings.ts';
import type { CommandInput, OptionSpec } from './command.ts';
import { driverOption } from './driver-option.ts';
import { EVENT_OPTIONS, type EventWish, readEventWish } from './event-options.ts';
import { LIVE_NAMES, LIVE_OPTIONS, type LiveWish, readLiveWish } from './live-options.ts';
import { misuseOf } from './misuse-of.ts';
import { notPossible, textOption, wholeIfGiven } from './option-value.ts';
import { readSource, type SourceWish } from './source-wish.ts';

/** A drill's command line, checked. */
export interface DrillOptions {
  /** Target or file, by `--target`. */
  readonly target: string | null;
  /** Target, corner or file that stands alone; null, where no option names one either, asks on the screen. */
  readonly named: string | null;
  readonly live: LiveWish;
  /** Plan or file, by `--plan`. */
  readonly plan: string | null;
  /** By `--event`; null for none. */
  readonly event: EventWish | null;
  /** An option of the live car was given: what stands alone is a corner. */
  readonly asksForCar: boolean;
  readonly source: SourceWish;
  readonly reps: number | null;
  readonly seed: number | null;
  readonly selfRating: boolean;
  /** Own pressure as pitch, ticks, a tone at the end. */
  readonly sound: boolean;
  /** By `--theme`; null for the one that the driver had last. */
  readonly theme: ThemeName | null;
  /** In lines that are only ever added. */
  readonly plain: boolean;
  readonly headless: boolean;
  readonly json: boolean;
  /** Null for the driver who always drives here. */
  readonly driver: string | null;
  readonly foot: 'left' | 'right' | null;
  readonly footwear: string | null;
  readonly condition: string | null;
  readonly record: string | null;
}

export const DRILL_OPTIONS: Readonly<Record<string, OptionSpec>> = {
  ...LIVE_OPTIONS,
  target: {
    type: 'string',
    value: 'T',
    help: 'target or target file (`ebbline target list` shows them)',
  },
  plan: {
    type: 'string',
    value: 'P',
    help: 'practice plan or plan file: what, in which order, how much shown (`ebbline plan list`)',
  },
  ...EVENT_OPTIONS,
  source: {
    type: 'string',
    value: 'S',
    help: 'hid, virtual, virtual:skilled|club|novice, pointer or replay:FILE',
  },
  reps: { type: 'string', value: 'N', help: 'reps in a block (default 10)' },
  seed: { type: 'string', value: 'N', help: 'seed of the virtual driver and of what is shown' },
  'self-rating': {
    type: 'boolean',
    help: 'say how each rep felt before its result: keys 1, 2, 3 (also s while driving)',
  },
  sound: {
    type: 'boolean',
    help: 'hear your own pressure as pitch on shown reps, and a tone for inside the corridor',
  },
  theme: {
    type: 'string',
    value: 'NAME',
    help: `${THEME_NAMES.join(', ')}; kept for the driver (key t)`,
  },
  plain: {
    type: 'boolean',
    help: 'in lines for a screen reader, keys typed as lines (by itself where TERM=dumb)',
  },
  headless: { type: 'boolean', help: 'no screen: print each rep and the block' },
  json: { type: 'boolean', help: 'with --headless: one JSON object at the end' },
  driver: { type: 'string', value: 'NAME', help: 'whose history it is' },
  foot: {
    type: 'string',
    value: 'left|right',
    help: 'which foot brakes (default: as in `rig setup`)',
  },
  footwear: { type: 'string', value: 'TEXT', help: 'shoes worn (default: as in `rig setup`)' },
  condition: { type: 'string', value: 'TEXT', help: 'what else differs today, kept with each rep' },
  record: { type: 'string', value: 'FILE', help: 'also write the raw reports to FILE' },
};

/** @throws Problem (exit code 2) for a value that is not one of those allowed. */
export function readDrillOptions({ positionals, values }: CommandInput): DrillOptions {
  const text = (name: string): string | null => textOption(values[name]);
  if (positionals.length > 1) {
    throw misuseOf('drill')(
      `it takes one target or corner, not ${positionals.length}`,
      'Name one corner, or `--target T`.',
    );
  }
  const named = positionals[0] ?? null;
  const asked = LIVE_NAMES.filter((name) => text(name) !== null);
  const event = readEventWish(text, named);
  refuseTwoSubjects(named, text('target'), asked);
  if (event === null) refuseBesidePlan(text, named);
  if (values.sound === true && (values.headless === true || values.json === true))
    throw notPossible('--sound', '--sound beside --headless', 'Leave one of them out.');
  if (values.plain === true && (values.headless === true || values.json === true))
    throw notPossible('--plain', '--plain beside --headless or --json', 'Leave one of them out.');
  return {
    target: text('target'),
    named,
    plan: text('plan'),
    event,
    live: readLiveWish({ positionals, values }),
    asksForCar: asked.length > 0,
    source: readSource(text('source')),
    reps: wholeIfGiven('--reps', values.reps, 1, 1000),
    seed: wholeIfGiven('--seed', values.seed, 0, Number.MAX_SAFE_INTEGER),
    selfRating: values['self-rating'] === true,
    sound: values.sound === true,
    theme: readTheme(text('theme')),
    plain: values.plain === true,
    headless: values.headless === true,
    json: values.json === true,
    driver: driverOption(values.driver, 'drill --driver'),
    foot: readFoot(text('foot')),
    footwear: text('footwear'),
    condition: text('condition'),
    record: text('record'),
  };
}

/** One drill is about one thing: a target over time, or a corner with a live car. */
function refuseTwoSubjects(
  named: string | null,
  target: string | null,
  asked: readonly string[],
): void {
  const first = asked[0];
  if (target !== null && first !== undefined) {
    const next = `Leave out --target to drive a corner, or --${asked.join(', --')} to follow the target over time.`;
    throw notPossible(`--${first}`, `--${first} beside --target`, next);
  }
  const option = target !== null ? '--target' : asked.includes('corner') ? '--corner' : null;
  if (named === null || option === null) return;
  throw notPossible(option, `${JSON.stringify(named)} beside ${option}`, 'Name one of them.');
}

/** A plan says all of that itself. */
function refuseBesidePlan(text: (name: string) => string | null, named: string | null): void {
  if (text('plan') === null) return;
  const given = ['target', 'reps', ...LIVE_NAMES].find((name) => text(name) !== null);
  if (given !== undefined)
    throw notPossible(
      `--${given}`,
      `--${given} beside --plan`,
      'The plan says it: leave one of them out.',
    );
  if (named !== null)
    throw notPossible(
      '--plan',
      `${JSON.stringify(named)} beside --plan`,
      'The plan names its zones.',
    );
}

function readTheme(text: string | null): ThemeName | null {
  const theme = THEME_NAMES.find((name) => name === text);
  if (theme !== undefined || text === null) return theme ?? null;
  throw notPossible('--theme', JSON.stringify(text), `Say one of: ${THEME_NAMES.join(', ')}.`);
}

function readFoot(text: string | null): 'left' | 'right' | null {
  if (text === null || text === 'left' || text === 'right') return text;
  throw notPossible('--foot', JSON.stringify(text), 'Say left or right.');
}
