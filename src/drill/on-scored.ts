import { describeOutcome } from '../score/describe-outcome.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { blockGrid } from './diagnosis/block-grid.ts';
import { repCurve } from './diagnosis/rep-curve.ts';
import type { DrillModel } from './drill-model.ts';
import { enterSummary, type Step } from './stages.ts';

/** The score has come: the rep is stored now, and shown when it is no longer held back. */
export function onScored(model: DrillModel, number: number, outcome: RepOutcome): Step {
  const scored = model.unscored.find(({ tag }) => tag.number === number);
  if (scored === undefined) return [model, []];
  const { tag, record, revealAtS } = scored;
  const { target } = model.setup;
  const curve = outcome.kind === 'scored' ? repCurve(record, outcome, blockGrid(target)) : null;
  const done = {
    tag,
    outcome,
    voided: null,
    sentence: describeOutcome(outcome),
    revealAtS,
    curve,
  };
  const { block } = model;
  const next = {
    ...model,
    unscored: model.unscored.filter((rep) => rep !== scored),
    block: { ...block, done: [done, ...block.done] },
  };
  return [
    next.stage.kind === 'summary' ? enterSummary(next, next.atS) : next,
    [{ kind: 'store', rep: { ...tag, target, order: 'blocked', voided: null, record, outcome } }],
  ];
}
