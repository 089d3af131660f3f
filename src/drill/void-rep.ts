import type { RepTag } from './drill-message.ts';
import type { DoneRep, DrillModel } from './drill-model.ts';
import { timingAfter } from './event/timing-after.ts';
import { gridTarget, plannedRep } from './plan/planned-rep.ts';
import { byPlan, planAfterRep } from './plan/rep-by-plan.ts';
import { countedRep, currentTag, recordOf } from './rep-end.ts';
import type { Step } from './stages.ts';
import { targetOf } from './target-of.ts';

/** Why a rep does not count, in the history's words and in the driver's. */
interface VoidReason {
  readonly voided: 'aborted' | 'device lost';
  readonly reason: string;
}

/** The rep is void: it is written down with its reason. Only an aborted rep uses up its place in the block. */
export function voidRep(
  model: DrillModel,
  span: { readonly cueS: number; readonly endS: number },
  why: VoidReason,
): Step {
  const tag = currentTag(model);
  const record = recordOf(model, span);
  const counts = why.voided === 'aborted';
  const counted = counts
    ? countedRep(model)
    : { ...model, attempts: model.attempts + 1, recording: null };
  const { block } = model;
  const rep = {
    ...tag,
    target: targetOf(model),
    zone: model.live?.zone ?? null,
    ...byPlan(model, tag),
    rating: null,
    voided: why.voided,
    record,
    outcome: null,
  };
  return [
    {
      ...counted,
      plan: planAfterRep(model, { tag, record, counts }),
      atS: span.endS,
      stage: stageAfterVoid(model, tag, span.endS),
      block: { ...counted.block, done: [doneVoid(model, tag, why, span.endS), ...block.done] },
      message: why.reason,
    },
    [{ kind: 'store', rep }],
  ];
}

function doneVoid(
  model: DrillModel,
  tag: RepTag,
  { voided, reason }: VoidReason,
  endS: number,
): DoneRep {
  return {
    tag,
    outcome: null,
    voided,
    call: null,
    sentence: reason,
    glance: [],
    warning: null,
    revealAtS: endS,
    rating: null,
    curve: null,
    gridTarget: gridTarget(model),
    drawn: null,
  };
}

function stageAfterVoid(model: DrillModel, rep: RepTag, endS: number): DrillModel['stage'] {
  return {
    kind: 'after',
    rep,
    revealAtS: endS,
    restFromS: endS,
    nextS: endS + restAfterVoid(model),
    answeredAtS: endS,
    onRoad: false,
    own: null,
    drive: null,
  };
}

/** In a lap the road goes on, result or not. */
function restAfterVoid(model: DrillModel): number {
  const { showS, restS } = timingAfter(model, 0);
  return plannedRep(model)?.zone.gapS === undefined ? restS : showS + restS;
}
