import { offsetMinutes } from '../../consistency/offset-minutes.ts';
import { CALL_WORDS } from '../../corner/call-word.ts';
import type { Feedback } from '../../drill/drill-view.ts';
import { ORDERS } from '../../drill/plan/practice-plan.ts';
import type { TargetChange } from '../../drill/plan/target-change.ts';
import type { LiveStart } from '../../live/live-start.ts';
import type { LiveControls } from '../../live/live-zone.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { KeptNote, KeptPractice, KeptRep, RepFields } from '../kept.ts';
import type { Foot, PhaseTag, PracticeStart, SourceKind, ZonedInstant } from '../store.ts';
import { canonicalJson } from './canonical-json.ts';
import { outcomeShape } from './outcome-shape.ts';
import { type SamplesJson, samplesJson } from './samples-json.ts';
import { samplesShape } from './samples-shape.ts';
import {
  anyNumber,
  type Check,
  fields,
  listOf,
  oneOf,
  orNull,
  text,
  whole,
  wordOf,
  yesOrNo,
} from './shape.ts';

/** A line of practices.jsonl. */
export interface PracticeLine extends PracticeStart {
  readonly id: string;
}

/** A line of reps.jsonl. */
export interface RepLine extends RepFields {
  readonly id: string;
  readonly practice: string;
  readonly outcomes: readonly RepOutcome[];
  readonly samples: SamplesJson;
}

/** A line of notes.jsonl. */
export type NoteLine = KeptNote['note'] & { readonly id: string; readonly rep: string | null };

export function practiceLine({ origin, start }: KeptPractice): string {
  return canonicalJson({ id: origin, ...start });
}

export function repLine({ origin, practice, fields, outcomes, record }: KeptRep): string {
  const line = canonicalJson({ id: origin, practice, ...fields, outcomes });
  // apart: they are long, and their fields have one order already
  return `${line.slice(0, -1)},"samples":${JSON.stringify(samplesJson(record()))}}`;
}

export function noteLine({ origin, rep, note }: KeptNote): string {
  return canonicalJson({ id: origin, rep, ...note });
}

const shortText = text(1000);
const shortTextOrNull = orNull(shortText);
const id = text(4000);
/** What a Date can hold. */
const LARGEST_UTC_MS = 8.64e15 - 2 * 86_400_000;
const count = whole(1, 2 ** 31 - 1);

const instantShape = fields<ZonedInstant>({
  utcMs: whole(-LARGEST_UTC_MS, LARGEST_UTC_MS),
  zone: (value, path) => text(100)(value, path) ?? zone(value as string, path),
  offsetMin: whole(-1440, 1440),
});

const knownZones = new Set<string>();

function zone(name: string, path: string): string | null {
  if (knownZones.has(name)) return null;
  try {
    offsetMinutes(0, name);
    knownZones.add(name);
    return null;
  } catch {
    return `${path} is no time zone that is known here`;
  }
}

export const practiceShape: Check = fields<PracticeLine>({
  id,
  driver: shortText,
  startedAt: instantShape,
  source: wordOf<SourceKind>({ hid: true, virtual: true, pointer: true, replay: true }),
  foot: wordOf<Foot>({ left: true, right: true }),
  footwear: shortText,
  calibrationId: shortText,
  sensor: wordOf<PracticeStart['sensor']>({
    force: true,
    pressure: true,
    travel: true,
    unknown: true,
  }),
  seed: orNull(whole(-Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER)),
});

const perAxle = fields<LiveStart['discC']>({ front: anyNumber, rear: anyNumber });

const liveShape = fields<LiveStart>({
  discC: perAxle,
  padC: perAxle,
  call: orNull(oneOf(...CALL_WORDS)),
  controls: fields<LiveControls>({
    steering: yesOrNo,
    throttle: yesOrNo,
    clutch: yesOrNo,
    paddles: yesOrNo,
  }),
});

const variedShape = fields<Extract<TargetChange, { kind: 'varied' }>>({
  kind: oneOf('varied'),
  levelFactor: anyNumber,
  releaseFactor: anyNumber,
});
const pacedShape = fields<Extract<TargetChange, { kind: 'paced by the steering' }>>({
  kind: oneOf('paced by the steering'),
});

const changeShape: Check = (value, path) => {
  const isVaried = (value as { readonly kind?: unknown } | null)?.kind === 'varied';
  return isVaried ? variedShape(value, path) : pacedShape(value, path);
};

export const repShape: Check = fields<RepLine>({
  id,
  practice: id,
  at: instantShape,
  car: shortTextOrNull,
  corner: shortTextOrNull,
  variant: shortTextOrNull,
  condition: shortTextOrNull,
  live: orNull(liveShape),
  targetId: shortText,
  targetVersion: shortText,
  targetChange: orNull(changeShape),
  number: count,
  block: count,
  phase: wordOf<PhaseTag>({
    'first-of-day': true,
    'warm-up': true,
    block: true,
    'carry-over': true,
  }),
  order: oneOf(...ORDERS),
  feedback: wordOf<Feedback>({ shown: true, hidden: true, 'first-of-day': true }),
  selfRating: shortTextOrNull,
  voided: orNull(wordOf<NonNullable<RepFields['voided']>>({ aborted: true, 'device lost': true })),
  outcomes: (value, path) => listOf(outcomeShape, 100)(value, path) ?? ascending(value, path),
  samples: samplesShape,
});

/** One outcome for each version, oldest first. */
function ascending(value: unknown, path: string): string | null {
  const versions = (value as readonly RepOutcome[]).map(({ version }) => version);
  return versions.every((version, i) => i === 0 || version > versions[i - 1]!)
    ? null
    : `${path} has a version twice, or not in order`;
}

export const noteShape: Check = fields<NoteLine>({
  id,
  rep: orNull(id),
  at: instantShape,
  driver: shortText,
  text: text(100_000),
  car: shortTextOrNull,
  corner: shortTextOrNull,
  variant: shortTextOrNull,
  gear: orNull(whole(0, 1000)),
});
