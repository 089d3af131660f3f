import { Document, isMap, isPair, isScalar, isSeq, visit } from 'yaml';
import { roundedTo } from '../rounded.ts';
import type { LearnedFromFile, TimeTargetFile } from '../target-file.ts';
import { DEFAULT_CORRIDOR, type LevelPhases } from '../target-spec.ts';
import type { LearnRep, LeftOut } from './learn-rep.ts';
import type { LearnedCurve } from './learn-target.ts';
import { HELD_SHARE } from './spread-band.ts';

/** What a learned target was made of, in the words of whoever chose it. */
export interface LearnedSource {
  readonly kind: 'trace' | 'reps';
  /** The trace, or the target or corner whose reps they are. */
  readonly name: string;
  /** How they were chosen, in words for the head of the file. */
  readonly choice: string;
  /** Day on which the target was learned. */
  readonly day: string;
  readonly used: readonly LearnRep[];
  readonly leftOut: readonly LeftOut[];
  /** Null for zones of a log. */
  readonly feedback: {
    readonly shown: number;
    readonly hidden: number;
    readonly firstOfDay: number;
  } | null;
}

/** The words of a target, and what level 1 stands for. */
export interface LearnedWords {
  readonly name: string;
  readonly cornerType: string;
  readonly fullScale: TimeTargetFile['full_scale'] | null;
}

const SMOOTHING_CRITERION =
  'cubic smoothing spline; the mean of the other reps comes closest to the rep left out';

/** The text of a target file that `readTarget` reads back to the learned curve. */
export function learnedFileText(
  curve: LearnedCurve,
  source: LearnedSource,
  words: LearnedWords,
): string {
  const document = new Document(learnedFileOf(curve, source, words));
  visit(document, {
    // one line a knot, as people write them
    Map: (_, node, path) => {
      if (isSeq(path.at(-1))) node.flow = true;
    },
    Seq: (_, node) => {
      if (node.items.every(isScalar)) node.flow = true;
    },
  });
  if (isMap(document.contents)) for (const pair of document.contents.items) addComment(pair);
  return header(source) + document.toString({ lineWidth: 100 });
}

const COMMENTS: Readonly<Record<string, string>> = {
  domain: ' seconds after the start of the rise',
  learned_from: ' how it was made; changes no score',
};

function addComment(pair: unknown): void {
  if (!isPair(pair) || !isScalar(pair.key)) return;
  const text = COMMENTS[String(pair.key.value)];
  if (text !== undefined) pair.key.commentBefore = text;
}

/** The same as data. */
export function learnedFileOf(
  curve: LearnedCurve,
  source: LearnedSource,
  { name, cornerType, fullScale }: LearnedWords,
): TimeTargetFile {
  const { phases, turnInS, steering, corridor } = curve;
  return {
    name,
    corner_type: cornerType,
    domain: 'time',
    ...levelKeys(phases),
    ...(turnInS === null ? {} : { turn_in_s: roundedTo(turnInS, 3) }),
    ...(steering.length === 0 ? {} : { steering: steeringKeys(curve) }),
    ...(corridor.knots.length === 0 ? {} : { corridor: corridorKeys(curve) }),
    ...(fullScale === null ? {} : { full_scale: fullScale }),
    learned_from: learnedFrom(curve, source),
  };
}

function levelKeys(
  phases: LevelPhases,
): Pick<TimeTargetFile, 'rise' | 'peak_level' | 'hold_s' | 'release'> {
  const { rise, peakLevel, hold, release } = phases;
  return {
    rise: { duration_s: roundedTo(rise.length, 4), shape: rise.shape },
    peak_level: roundedTo(peakLevel, 4),
    hold_s: roundedTo(hold, 4),
    release: { duration_s: roundedTo(release.length, 4), ...releaseKeys(phases) },
  };
}

function releaseKeys({ rise, peakLevel, hold, release: { shape, length } }: LevelPhases) {
  if (shape.kind !== 'knots') return { shape: 'linear' } as const;
  const startS = rise.length + hold;
  const knots = shape.knots.map(({ x, y }) => ({
    time_s: roundedTo(startS + x * length, 4),
    level: roundedTo(y * peakLevel, 4),
  }));
  return { shape: 'knots', knots } as const;
}

function steeringKeys({ steering }: LearnedCurve): NonNullable<TimeTargetFile['steering']> {
  const knots = steering.map(({ x, y }) => ({
    time_s: roundedTo(x, 3),
    angle_deg: roundedTo(y, 1),
  }));
  return { shape: 'knots', knots };
}

function corridorKeys({ corridor }: LearnedCurve): NonNullable<TimeTargetFile['corridor']> {
  return {
    knots: corridor.knots.map(({ x, y }) => ({
      time_s: roundedTo(x, 3),
      half_width_level: roundedUp(y),
    })),
  };
}

function learnedFrom(curve: LearnedCurve, source: LearnedSource): LearnedFromFile {
  const { registered, smoothing, corridor } = curve;
  const used = source.used.map(({ number }) => number);
  const { feedback, leftOut } = source;
  return {
    source: source.kind,
    name: source.name,
    learned_on: source.day,
    ...(source.kind === 'trace' ? { zones: used } : { reps: used }),
    ...(feedback === null
      ? {}
      : {
          shown_reps: feedback.shown,
          hidden_reps: feedback.hidden,
          first_of_day_reps: feedback.firstOfDay,
        }),
    ...(leftOut.length === 0 ? {} : { left_out: leftOut }),
    landmarks: registered.landmarks.map(({ name, timeS, spreadS }) => ({
      landmark: name,
      time_s: roundedTo(timeS, 3),
      spread_s: roundedTo(spreadS, 3),
    })),
    smoothing_criterion: SMOOTHING_CRITERION,
    smoothing_half_height_hz: roundedTo(smoothing.halfHeightHz, 2),
    smoothing_miss_level: roundedTo(smoothing.missLevel, 5),
    spread_level: roundedTo(curve.spreadLevel, 5),
    over_time_spread_level: roundedTo(curve.overTimeSpreadLevel, 5),
    corridor: corridorWords(corridor.kind),
  };
}

/** How the corridor was made, in words. */
export function corridorWords(kind: LearnedCurve['corridor']['kind']): string {
  const held = `${Math.round(100 * HELD_SHARE)} % of further reps at each moment`;
  const { floorLevel, share } = DEFAULT_CORRIDOR;
  const usual = `${100 * floorLevel} % of full scale or ${100 * share} % of the level`;
  if (kind === 'default') return `the reps are closer than the default, which is kept: ${usual}`;
  if (kind === 'cut') return `as wide as a corridor may be; ${held} would be wider`;
  return `holds ${held}; never narrower than ${usual}`;
}

function header({ kind, used, choice }: LearnedSource): string {
  const what = kind === 'trace' ? 'logged braking zones' : 'reps';
  return `# yaml-language-server: $schema=../schema/target.schema.json
#
# Learned from ${used.length} ${what}: ${choice}
# What was done, not what could be done: to be approached from the safe side, with an instructor.
`;
}

/** A corridor must not become narrower by being written. */
function roundedUp(level: number): number {
  return Math.ceil(1e4 * level) / 1e4;
}
