import type { LiveView } from '../live/live-view.ts';
import { errorLevel } from '../score/deviation.ts';
import type { DrillModel, OwnTraces, Stage } from './drill-model.ts';
import type { DrillPhase, DrillView, RepLine } from './drill-view.ts';
import { liveViewOf } from './live/live-view-of.ts';
import { restPicturesOf } from './pictures/rest-pictures-of.ts';
import { planViewOf } from './plan/plan-view-of.ts';
import { repLines } from './rep-lines.ts';
import { trackOf } from './sample-log.ts';
import { FOOT_OFF_LEVEL } from './stages.ts';
import { targetOf } from './target-of.ts';
import { hidesOwn, hidesTarget, isOwnSeen } from './what-is-hidden.ts';
import { BRAKE_UNKNOWN, displayOpen, FOOT_ON_BRAKE, paused, waitingForDevices } from './words.ts';

/** What may be seen of the drill now. Costs nothing that grows with the length of the rep. */
export function viewOf(model: DrillModel): DrillView {
  const { setup, stage, block, levels, atS } = model;
  const lines = repLines(model);
  const own = visibleOwn(model);
  const live = liveViewOf(model);
  const tag = stage.kind === 'after' ? stage.rep : null;
  return {
    targetName: stage.kind === 'summary' ? stage.byTarget[0].targetName : setup.target.name,
    cornerType: setup.target.cornerType,
    rep: tag?.place ?? Math.min(block.place, block.reps),
    reps: block.reps,
    done: Math.min(block.place - 1, block.reps),
    feedback: tag?.feedback ?? model.feedback,
    phase: phaseOf(model),
    atS,
    toCueS: toCueS(model),
    nowS: nowS(model),
    target: hidesTarget(model) || isCallSecret(model, live) ? null : targetOf(model),
    own: own && trackOf(own.brake),
    ownSteering: own && setup.axes.steering ? trackOf(own.steering) : null,
    brakeLevel: hidesOwn(model) ? null : levels.brake,
    throttleLevel: levels.throttle,
    clutchLevel: levels.clutch,
    steeringDeg: levels.steering,
    paced: model.paced,
    gear: live?.gear ?? model.gear,
    liveErrorLevel:
      stage.kind === 'braking' && !hidesOwn(model) ? errorLevel(stage.liveError) : null,
    restS: phaseOf(model) === 'rest' && stage.kind === 'after' ? stage.nextS - atS : null,
    lastReps: lines,
    rating: stage.kind === 'after' && atS < stage.revealAtS ? model.rating : null,
    buttons: setup.buttons,
    note: model.note,
    display: model.display,
    menuRow: model.menu?.row ?? null,
    result: resultOf(model, lines),
    summary: stage.kind === 'summary' ? stage.summary : null,
    health: model.health,
    dropped: model.dropped,
    message: messageOf(model, lines[0]?.warning ?? null),
    pictures: restPicturesOf(model),
    live,
    plan: planViewOf(model),
  };
}

/** Where the rep is on its target: moved by the clock, or by the driver's own wheel. */
function nowS({ stage, atS }: DrillModel): number {
  if (stage.kind !== 'braking') return 0;
  return stage.pace === null ? atS - stage.originS : stage.pace.now.placeS;
}

function phaseOf({ stage, atS }: DrillModel): DrillPhase {
  switch (stage.kind) {
    case 'ready':
      return atS < stage.cueS ? 'countdown' : 'cue';
    case 'after':
      return atS < stage.restFromS ? 'result' : 'rest';
    case 'rolling':
      return 'cue';
    case 'driving':
      return 'braking';
    default:
      return stage.kind;
  }
}

/** A late call changes the target; before it comes nobody is to see that it will. */
function isCallSecret({ live: rep }: DrillModel, live: LiveView | null): boolean {
  return rep !== null && rep.zone.call !== null && live?.call === null;
}

function toCueS({ stage, atS }: DrillModel): number | null {
  const counting = stage.kind === 'countdown' || stage.kind === 'ready';
  return counting && atS < stage.cueS ? stage.cueS - atS : null;
}

function visibleOwn(model: DrillModel): OwnTraces | null {
  const { stage } = model;
  return isOwnSeen(model) && (stage.kind === 'braking' || stage.kind === 'after')
    ? stage.own
    : null;
}

function resultOf({ stage, block }: DrillModel, lines: readonly RepLine[]): RepLine | null {
  if (stage.kind !== 'after') return null;
  const index = block.done.findIndex(({ tag }) => tag.number === stage.rep.number);
  const line = lines[index];
  return line !== undefined && (line.outcome !== null || line.voided !== null) ? line : null;
}

/** @param warning of the newest rep; it stands from the result to the end of the next countdown */
function messageOf(model: DrillModel, warning: string | null): string | null {
  const { stage, lostDevices, message } = model;
  if (lostDevices.length > 0) return joined(message, waitingForDevices(lostDevices));
  if (model.menu !== null) return displayOpen(model.setup.buttons);
  if (stage.kind === 'paused') return paused(model.setup.buttons);
  const waits = stage.kind === 'arming' ? whyNotArmed(stage, model) : null;
  return message ?? waits ?? (BETWEEN_REPS.has(stage.kind) ? warning : null);
}

const BETWEEN_REPS: ReadonlySet<Stage['kind']> = new Set(['after', 'arming', 'countdown'] as const);

function whyNotArmed(
  { offSinceS }: Extract<Stage, { kind: 'arming' }>,
  { levels }: DrillModel,
): string | null {
  if (levels.brake === null) return BRAKE_UNKNOWN;
  return offSinceS === null && levels.brake > FOOT_OFF_LEVEL ? FOOT_ON_BRAKE : null;
}

function joined(first: string | null, second: string): string {
  return first === null ? second : `${first} ${second}`;
}
