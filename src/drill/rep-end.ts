import type { RepTag } from './drill-message.ts';
import type { DrillModel, OwnTraces } from './drill-model.ts';
import { repRecord } from './recording.ts';
import type { Step } from './stages.ts';

/** Why a rep does not count, in the history's words and in the driver's. */
export interface VoidReason {
  readonly voided: 'aborted' | 'device lost';
  readonly reason: string;
}

/** The rep under way. */
export function currentTag(model: DrillModel): RepTag {
  const { block, attempts, feedback } = model;
  return {
    number: attempts + 1,
    place: block.place,
    block: block.number,
    phase: block.phase,
    feedback,
  };
}

/** The rep is over: its record goes to be scored, and the result is held back. */
export function finishRep(
  model: DrillModel,
  span: { readonly cueS: number; readonly endS: number },
  own: OwnTraces | null,
): Step {
  const tag = currentTag(model);
  const { setup } = model;
  const record = recordOf(model, span);
  const { holdS, showS, restS } = setup.timing;
  const revealAtS = span.endS + holdS;
  const restFromS = revealAtS + showS;
  const stage = {
    kind: 'after',
    rep: tag,
    revealAtS,
    restFromS,
    nextS: restFromS + restS,
    own,
  } as const;
  const next = {
    ...countedRep(model),
    atS: span.endS,
    stage,
    unscored: [...model.unscored, { tag, record, revealAtS }],
  };
  return [next, [{ kind: 'score', rep: tag.number, record, target: setup.target }]];
}

/** The rep is void: it is written down with its reason. Only an aborted rep uses up its place in the block. */
export function voidRep(
  model: DrillModel,
  span: { readonly cueS: number; readonly endS: number },
  { voided, reason }: VoidReason,
): Step {
  const tag = currentTag(model);
  const { setup, block } = model;
  const record = recordOf(model, span);
  const done = {
    tag,
    outcome: null,
    voided,
    sentence: reason,
    revealAtS: span.endS,
    curve: null,
  };
  const restFromS = span.endS;
  const stage = {
    kind: 'after',
    rep: tag,
    revealAtS: span.endS,
    restFromS,
    nextS: restFromS + setup.timing.restS,
    own: null,
  } as const;
  const counted =
    voided === 'aborted'
      ? countedRep(model)
      : { ...model, attempts: model.attempts + 1, recording: null };
  return [
    {
      ...counted,
      atS: span.endS,
      stage,
      block: { ...counted.block, done: [done, ...block.done] },
      message: reason,
    },
    [
      {
        kind: 'store',
        rep: { ...tag, target: setup.target, order: 'blocked', voided, record, outcome: null },
      },
    ],
  ];
}

function countedRep(model: DrillModel): DrillModel {
  const { block } = model;
  return {
    ...model,
    block: { ...block, place: block.place + 1 },
    attempts: model.attempts + 1,
    repsInLife: model.repsInLife + 1,
    recording: null,
    message: null,
  };
}

function recordOf(
  { recording, setup, atS }: DrillModel,
  span: { readonly cueS: number; readonly endS: number },
) {
  if (recording === null) throw new Error(`no recording of the rep that ends at ${atS} s`);
  return repRecord(recording, span, setup.axes, setup.brakeStepLevel);
}
