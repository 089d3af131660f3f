import type { PlanPoint } from '../../../src/corner/plan-view.ts';
import { PLAIN_DISPLAY } from '../../../src/drill/display/display-settings.ts';
import type { DrillView, RepLine } from '../../../src/drill/drill-view.ts';
import type { RestPictures } from '../../../src/drill/pictures/rest-pictures.ts';
import type { LiveEvent } from '../../../src/live/live-event.ts';
import type { LivePlan, LiveView, PlaceTrack, RoadMark } from '../../../src/live/live-view.ts';
import type { LiveMeasures } from '../../../src/score/live-measures.ts';
import { GG, OWN, OWN_COUPLING, TARGET, TARGET_COUPLING } from '../grip/sample-grip.ts';
import { BRAKING, HAIRPIN, SUMMARY, scored } from '../sample-views.ts';

type Knot = readonly [number, number];

function track(knots: readonly Knot[]): PlaceTrack {
  return {
    placeM: Float64Array.from(knots, ([placeM]) => placeM),
    value: Float64Array.from(knots, ([, value]) => value),
  };
}

/** The part of a track before a place. */
export function until({ placeM, value }: PlaceTrack, limitM: number): PlaceTrack {
  const found = placeM.findIndex((at) => at > limitM);
  const count = found < 0 ? placeM.length : found;
  return { placeM: placeM.subarray(0, count), value: value.subarray(0, count) };
}

/** A curve through knots in steps of 0.4 m. */
function fine(knots: readonly Knot[]): PlaceTrack {
  const steps: Knot[] = [];
  knots.slice(1).forEach(([to, last], index) => {
    const [from, first] = knots[index]!;
    for (let at = from; at < to; at += 0.4)
      steps.push([at, first + ((last - first) * (at - from)) / (to - from)]);
  });
  return track(steps);
}

const TARGET_LEVEL = track([
  [-73, 0],
  [-62, 0.57],
  [0, 0.25],
  [9, 0.23],
  [30, 0.08],
  [46, 0],
]);
/** Five metres late, locks the front on the way in, and comes off too quickly. */
export const OWN_LEVEL: PlaceTrack = fine([
  [-300, 0],
  [-68, 0],
  [-55, 0.6],
  [-40, 0.58],
  [-33, 0.4],
  [-20, 0.42],
  [0, 0.3],
  [14, 0.12],
  [24, 0.04],
  [46, 0],
]);
const TARGET_ANGLE = track([
  [-73, 0],
  [0, 0],
  [20, 45],
  [40, 96],
  [46, 96],
]);
export const OWN_ANGLE: PlaceTrack = fine([
  [-300, 0],
  [-4, 0],
  [18, 62],
  [40, 90],
  [46, 94],
]);

export const MARKS: readonly RoadMark[] = [
  { sM: -200, kind: 'board', word: '200' },
  { sM: -150, kind: 'board', word: '150' },
  { sM: -100, kind: 'board', word: '100' },
  { sM: -84, kind: 'coach', word: 'end of the wall' },
  { sM: -73, kind: 'brake', word: 'brake' },
  { sM: -50, kind: 'board', word: '50' },
  { sM: 0, kind: 'turn-in', word: 'turn-in' },
];

const LOCK: LiveEvent = {
  kind: 'lock-up',
  axle: 'front',
  fromM: -46,
  fromS: 0.5,
  toM: -35,
  toS: 0.7,
};
const shift = (fromGear: number, atM: number, overRev = false): LiveEvent => ({
  kind: 'downshift',
  fromGear,
  toGear: fromGear - 1,
  atM,
  atS: 0,
  rpm: 8200,
  overRev,
  rearUse: 0.9,
  byDriver: true,
});
export const EVENTS: readonly LiveEvent[] = [
  LOCK,
  shift(5, -52),
  shift(4, -28, true),
  { kind: 'anti-lock', axle: 'rear', fromM: 12, fromS: 1.7, toM: null, toS: null },
];

/** A straight into a left turn of 165 degrees on a radius of 25 m. */
const ROAD: readonly PlanPoint[] = Array.from({ length: 451 }, (_, i) => {
  const sM = -150 + i * 0.5;
  const headingRad = Math.max(0, sM) / 25;
  return {
    sM,
    headingRad,
    xM: sM < 0 ? sM : 25 * Math.sin(headingRad),
    yM: sM < 0 ? 0 : 25 * (1 - Math.cos(headingRad)),
  };
});

export const PLAN: LivePlan = {
  road: ROAD,
  marks: [
    { sM: -73, kind: 'target brake point' },
    { sM: -68, kind: 'brake point' },
    { sM: -66, kind: 'bump' },
    { sM: -52, kind: 'downshift' },
    { sM: -46, kind: 'lock-up' },
    { sM: -28, kind: 'downshift' },
    { sM: 0, kind: 'turn-in' },
    { sM: 2, kind: 'start of release' },
    { sM: 9, kind: 'target start of release' },
    { sM: 46, kind: 'slowest' },
  ],
};

export const RAIL =
  'The wheel does not place the car; this teaches order and rhythm, not distance judgement.';

export const APPROACH: LiveView = {
  carName: 'Prototype',
  variant: 'qualifying',
  stage: 'approach',
  placeM: -131.4,
  speedMps: 68,
  targetSpeedMps: null,
  marks: MARKS,
  call: null,
  fromM: -73,
  toM: 46,
  turnInM: 0,
  slowestM: 46,
  startOfReleaseM: 9,
  level: { target: TARGET_LEVEL, own: null },
  corridorLevel: {
    placeM: TARGET_LEVEL.placeM,
    value: TARGET_LEVEL.value.map((level) => Math.max(0.015, 0.05 * level)),
  },
  hasWheel: true,
  steeringDeg: { target: TARGET_ANGLE, own: null },
  events: [],
  frontUse: 0.1,
  rearUse: 0.1,
  locked: null,
  gear: 5,
  rpm: 7900,
  revLimitRpm: 8500,
  fade: null,
  remarks: [RAIL],
  plan: null,
};

/** The car at a place of the zone, with all that had happened there. */
export function inZone(placeM: number): LiveView {
  return {
    ...APPROACH,
    stage: 'zone',
    placeM,
    speedMps: 41,
    targetSpeedMps: 38.5,
    level: { target: TARGET_LEVEL, own: until(OWN_LEVEL, placeM) },
    steeringDeg: { target: TARGET_ANGLE, own: until(OWN_ANGLE, placeM) },
    events: EVENTS.filter((event) => ('atM' in event ? event.atM : event.fromM) <= placeM),
    frontUse: 0.86,
    rearUse: 0.64,
    gear: 3,
    rpm: 6420,
  };
}

const OVER: LiveView = {
  ...inZone(60),
  stage: 'over',
  level: { target: TARGET_LEVEL, own: OWN_LEVEL },
  steeringDeg: { target: TARGET_ANGLE, own: OWN_ANGLE },
  plan: PLAN,
  fade: { peakForceN: 512, coldPeakForceN: 470 },
};

export const MEASURES: LiveMeasures = {
  brakePointErrorM: 5.2,
  brakePointErrorS: 0.076,
  slowestSpeedMps: 18.6,
  slowestSpeedErrorMps: 1.1,
  startOfReleaseErrorM: -7,
  releaseSpeedErrorMps: 1.5,
  apexLevel: 0.01,
  apexLevelError: -0.01,
  gripUse: 0.88,
  lockUps: [],
  antiLock: [],
  lockedS: 0.1,
  antiLockTurnedS: 0,
  lengthenedM: 2,
  shifts: [],
  missedDownshifts: 0,
  timeLostS: 0.12,
  turnInErrorM: -4,
  steeringRatio: 1.1,
};

const outcome = {
  ...scored(64.2, { release: 0.58, hit: 0.91, smooth: 0.86, brakePoint: 0.7 }, 1),
  version: 2,
  live: MEASURES,
};

export const LIVE_REPS: readonly RepLine[] = [
  {
    number: 5,
    targetName: null,
    warning: null,
    feedback: 'shown',
    outcome,
    voided: null,
    call: null,
    sentence: 'front locked for 11 m: ease, re-apply, carry on',
    glance: ['front', 'locked'],
  },
  {
    number: 4,
    targetName: null,
    warning: null,
    feedback: 'hidden',
    outcome: null,
    voided: null,
    call: null,
    sentence: '',
    glance: [],
  },
  {
    number: 3,
    targetName: null,
    warning: null,
    feedback: 'shown',
    outcome: null,
    voided: 'aborted',
    call: null,
    sentence: '',
    glance: [],
  },
  {
    number: 2,
    targetName: null,
    warning: null,
    feedback: 'shown',
    outcome: {
      ...outcome,
      score: 91,
      live: { ...MEASURES, brakePointErrorM: -12.4, slowestSpeedErrorMps: -4.2 },
    },
    voided: null,
    call: null,
    sentence: '',
    glance: [],
  },
  {
    number: 1,
    targetName: null,
    warning: null,
    feedback: 'first-of-day',
    outcome: {
      kind: 'no-rep',
      version: 2,
      score: 0,
      reason: 'braked too late',
      side: null,
      flags: [],
    },
    voided: null,
    call: null,
    sentence: 'braked too late to make the corner',
    glance: [],
  },
];

/** A drill with the live car, in a stage of it. */
export function withLive(live: LiveView, rest: Partial<DrillView> = {}): DrillView {
  return { ...BRAKING, own: null, ownSteering: null, lastReps: LIVE_REPS, live, ...rest };
}

const PICTURES: RestPictures = {
  gg: { limits: GG.limits, target: TARGET, own: [OWN] },
  coupling: { target: TARGET_COUPLING, own: [OWN_COUPLING] },
  above: null,
};
const BLOCK_PICTURES: RestPictures = {
  gg: { limits: GG.limits, target: TARGET, own: [TARGET, TARGET, OWN] },
  coupling: { target: TARGET_COUPLING, own: [TARGET_COUPLING, OWN_COUPLING] },
  above: { ...PLAN, marks: [...PLAN.marks, { sM: -71, kind: 'brake point' }] },
};
const NO_WHEEL = 'No wheel: braking only; the wheel follows the rail.';
const PADDLES = 'No paddles: the downshifts come at the target’s places.';
const WAITING: LiveView = { ...APPROACH, stage: 'waiting', placeM: -277 };
const hidden = { feedback: 'hidden' } as const;
const first = { feedback: 'first-of-day', target: null } as const;
const result = LIVE_REPS[0]!;

/** One view per state of the live car. */
export const LIVE_VIEWS: Readonly<Record<string, DrillView>> = {
  waiting: withLive(WAITING, { phase: 'arming' }),
  'waiting-bare': withLive(
    {
      ...WAITING,
      hasWheel: false,
      remarks: [RAIL, NO_WHEEL, PADDLES],
      fade: { peakForceN: 512, coldPeakForceN: 470 },
    },
    { phase: 'arming' },
  ),
  approach: withLive(APPROACH, { phase: 'cue' }),
  beat: withLive({ ...APPROACH, placeM: -96 }, { phase: 'cue' }),
  'approach-hidden': withLive(APPROACH, { phase: 'cue', ...hidden }),
  'approach-first-of-day': withLive(APPROACH, { phase: 'cue', ...first }),
  call: withLive({ ...APPROACH, call: 'car inside' }, { phase: 'cue' }),
  'call-beat': withLive({ ...APPROACH, placeM: -147, call: 'defend' }, { phase: 'cue' }),
  zone: withLive(inZone(15)),
  'rest-gg': withLive(OVER, {
    ...{ phase: 'rest', restS: 4.6, result, pictures: PICTURES },
    display: { ...PLAIN_DISPLAY, picture: 'gg' },
  }),
  'rest-coupling': withLive(OVER, {
    ...{ phase: 'rest', restS: 4.6, result, pictures: PICTURES },
    display: { ...PLAIN_DISPLAY, picture: 'coupling' },
  }),
  'rest-curve': withLive(OVER, {
    ...{ phase: 'rest', restS: 4.6, result, pictures: PICTURES },
    display: { ...PLAIN_DISPLAY, picture: 'curve' },
  }),
  'summary-gg': withLive(OVER, {
    ...{ phase: 'summary', done: 10, summary: SUMMARY, pictures: BLOCK_PICTURES },
    display: { ...PLAIN_DISPLAY, picture: 'gg' },
  }),
  'summary-above': withLive(OVER, {
    ...{ phase: 'summary', done: 10, summary: SUMMARY, pictures: BLOCK_PICTURES },
    display: { ...PLAIN_DISPLAY, picture: 'above' },
  }),
  'zone-stacked': withLive(inZone(15), { display: { ...PLAIN_DISPLAY, layout: 'stacked' } }),
  'zone-preview': withLive(inZone(15), {
    display: { ...PLAIN_DISPLAY, previewS: 0.6, zoom: 2, corridor: false },
  }),
  'zone-locked': withLive({
    ...inZone(-40),
    events: [{ ...LOCK, toM: null, toS: null }],
    locked: 'front',
    frontUse: 1.42,
    rpm: 8460,
    call: 'damp',
  }),
  'zone-no-wheel': withLive({
    ...inZone(-20),
    hasWheel: false,
    steeringDeg: { target: TARGET_ANGLE, own: null },
  }),
  'zone-hidden': withLive(inZone(15), hidden),
  'zone-first-of-day': withLive(inZone(-30), first),
  hold: withLive({ ...OVER, plan: null }, { phase: 'result', result: null }),
  'hold-hidden': withLive(
    {
      ...OVER,
      plan: null,
      level: { target: TARGET_LEVEL, own: null },
      steeringDeg: { target: TARGET_ANGLE, own: null },
    },
    { phase: 'result', result: null, ...hidden },
  ),
  result: withLive(OVER, { phase: 'result', result }),
  rest: withLive(OVER, { phase: 'rest', restS: 4.2, result }),
  'rest-first-of-day': withLive(
    {
      ...OVER,
      plan: null,
      level: { target: null, own: OWN_LEVEL },
      steeringDeg: { target: null, own: OWN_ANGLE },
      startOfReleaseM: null,
      corridorLevel: null,
    },
    { phase: 'rest', restS: 4.2, result, ...first },
  ),
  void: withLive({ ...OVER, plan: null }, { phase: 'rest', restS: 4.2, result: LIVE_REPS[2]! }),
  paused: withLive(WAITING, { phase: 'paused' }),
  summary: withLive(WAITING, {
    phase: 'summary',
    done: 10,
    target: HAIRPIN,
    summary: SUMMARY,
  }),
};
