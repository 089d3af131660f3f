import { engineRpm } from '../../car/gearbox.ts';
import type { LiveCar } from '../../live/live-car.ts';
import type { LiveView, PlaceTrack } from '../../live/live-view.ts';
import type { LiveZone } from '../../live/live-zone.ts';
import type { DerivedTarget } from '../../target/derive/derive-target.ts';
import type { DrillModel } from '../drill-model.ts';
import { trackOf } from '../sample-log.ts';
import { hidesOwn, hidesTarget, isOwnSeen } from '../what-is-hidden.ts';
import { type LaneTargets, valueAt } from './lane-targets.ts';
import { liveMarks } from './live-marks.ts';
import { livePlanView } from './live-plan-view.ts';
import { liveRemarks } from './live-remarks.ts';
import type { LiveRep } from './live-rep.ts';
import type { OwnLanes, RepDrive } from './rep-drive.ts';

/** What may be seen of the live car now; null in a drill over time. */
export function liveViewOf(model: DrillModel): LiveView | null {
  const { live, feedback, setup } = model;
  if (live === null || setup.live === null) return null;
  const { zone } = live;
  const drive = driveOf(model);
  const placeM = drive?.car.sM ?? zone.rollFromM;
  const told = toldTarget(live, model, placeM);
  const lanes = hidesTarget(model) ? null : told.lanes;
  const own = isOwnSeen(model) && drive !== null ? drive.own : null;
  const shown = setup.live.controls;
  return {
    carName: zone.car.name,
    variant: setup.live.variant,
    stage: stageOf(model),
    placeM,
    speedMps: drive?.car.speedMps ?? zone.corner.approachSpeedMps,
    targetSpeedMps: lanes && valueAt(lanes.speedMps, placeM),
    marks: liveMarks(zone, feedback === 'shown' ? told.derived : null),
    call: told.isCalled ? (zone.call?.word ?? null) : null,
    fromM: told.derived.zone.brakePointM,
    toM: told.derived.zone.slowestM,
    turnInM: 0,
    slowestM: told.derived.zone.slowestM,
    startOfReleaseM: lanes && told.derived.keys.startOfRelease.sM,
    level: { target: lanes?.level ?? null, own: own && ownTrack(own, 'level') },
    corridorLevel: lanes?.corridorLevel ?? null,
    hasWheel: shown.steering,
    steeringDeg: {
      target: lanes?.steeringDeg ?? null,
      own: own !== null && shown.steering ? ownTrack(own, 'steeringDeg') : null,
    },
    events: drive?.car.events ?? [],
    ...axlesOf(model, drive),
    ...engineOf(zone, drive),
    fade: fadeOf(live, told, setup.live.stintS),
    remarks: liveRemarks(setup.live),
    plan: livePlanView(model),
  };
}

/** The car of the rep under way or just over. */
export function driveOf({ stage }: DrillModel): RepDrive | null {
  return 'drive' in stage ? stage.drive : null;
}

function stageOf({ stage }: DrillModel): LiveView['stage'] {
  if (stage.kind === 'rolling') return 'approach';
  if (stage.kind === 'driving') return 'zone';
  return stage.kind === 'after' && stage.drive !== null ? 'over' : 'waiting';
}

interface ToldTarget {
  readonly isCalled: boolean;
  readonly derived: DerivedTarget;
  readonly lanes: LaneTargets;
}

/** The target as far as the driver has been told: until the call it is the one that was prepared for. */
function toldTarget(
  { zone, lanes, lanesBefore }: LiveRep,
  model: DrillModel,
  placeM: number,
): ToldTarget {
  if (zone.call === null || lanesBefore === null)
    return { isCalled: false, derived: zone.derived, lanes };
  const isCalled = driveOf(model) !== null && placeM >= zone.call.atM;
  return isCalled
    ? { isCalled, derived: zone.derived, lanes }
    : { isCalled, derived: zone.call.before, lanes: lanesBefore };
}

function ownTrack(own: OwnLanes, lane: keyof OwnLanes): PlaceTrack {
  const { timeS, value } = trackOf(own[lane]);
  return { placeM: timeS, value };
}

function axlesOf(
  model: DrillModel,
  drive: RepDrive | null,
): Pick<LiveView, 'frontUse' | 'rearUse' | 'locked'> {
  if (drive === null || model.stage.kind !== 'driving')
    return { frontUse: null, rearUse: null, locked: null };
  const { car } = drive;
  const seen = !hidesOwn(model);
  return {
    frontUse: seen ? car.front.use : null,
    rearUse: seen ? car.rear.use : null,
    locked: lockedAxles(car),
  };
}

/** A locked axle is heard and felt in any car, so that no feedback plan hides it. */
function lockedAxles({ events }: LiveCar): LiveView['locked'] {
  const locks = (side: 'front' | 'rear'): boolean =>
    events.some((e) => e.kind === 'lock-up' && e.axle === side && e.toM === null);
  if (locks('front')) return locks('rear') ? 'both' : 'front';
  return locks('rear') ? 'rear' : null;
}

function engineOf(
  { car, corner }: LiveZone,
  drive: RepDrive | null,
): Pick<LiveView, 'gear' | 'rpm' | 'revLimitRpm'> {
  const gear = drive?.car.gear ?? corner.gears.approach;
  const rpm = drive?.car.rpm ?? engineRpm(car.gearbox, gear, corner.approachSpeedMps);
  return { gear, rpm, revLimitRpm: car.gearbox.revLimitRpm };
}

/** Of the target the driver has been told: before a late call and after it, the brakes alone make the difference. */
function fadeOf(
  { cold }: LiveRep,
  { isCalled, derived }: ToldTarget,
  stintS: number | null,
): LiveView['fade'] {
  if (stintS === null) return null;
  const coldTarget = isCalled ? cold.derived : (cold.call?.before ?? cold.derived);
  return {
    peakForceN: derived.keys.peak.pedalForceN,
    coldPeakForceN: coldTarget.keys.peak.pedalForceN,
  };
}
