import { adviceBands, BAND_REPS } from '../score/advice-bands.ts';
import { faultOf } from '../score/describe-outcome.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { pacedStretch } from '../target/paced-stretch.ts';
import { blockGrid } from './diagnosis/block-grid.ts';
import { liveRepCurve } from './diagnosis/live-rep-curve.ts';
import { pacedRepCurve } from './diagnosis/paced-rep-curve.ts';
import { repCurve } from './diagnosis/rep-curve.ts';
import type { DrillModel, UnscoredRep } from './drill-model.ts';
import { drawnRep } from './pictures/drawn-rep.ts';
import { fatigueAtRep } from './plan/plan-words.ts';
import { byPlan, planAfterScore } from './plan/rep-by-plan.ts';
import { enterSummary, type Step } from './stages.ts';

/** The score has come: the rep is stored now, and shown when it is no longer held back. */
export function onScored(model: DrillModel, number: number, outcome: RepOutcome): Step {
  const scored = model.unscored.find(({ tag }) => tag.number === number);
  if (scored === undefined) return [model, []];
  const { tag, record, target, zone, rating, revealAtS } = scored;
  const curve = curveOf(scored, outcome);
  const plan = planAfterScore(model, tag, outcome);
  const told = faultOf(outcome, adviceBands(model.recent), model.setup.units);
  const done = {
    tag,
    outcome,
    voided: null,
    call: zone?.call?.word ?? null,
    sentence: told?.words ?? '',
    glance: told?.glance ?? [],
    warning: fatigueAtRep(model, plan, tag),
    revealAtS,
    rating,
    curve,
    gridTarget: scored.gridTarget,
    drawn: drawnRep(scored, outcome),
  };
  const { block } = model;
  const next = {
    ...model,
    plan,
    unscored: model.unscored.filter((rep) => rep !== scored),
    block: { ...block, done: [done, ...block.done] },
    recent: [...model.recent, outcome].slice(-BAND_REPS),
  };
  return [
    next.stage.kind === 'summary' ? enterSummary(next, next.atS) : next,
    [
      {
        kind: 'store',
        rep: { ...tag, target, zone, ...byPlan(model, tag), rating, voided: null, record, outcome },
      },
    ],
  ];
}

/** On the grid of the block's target; a late call or a variation makes another target, whose curve has no place there. */
function curveOf(
  { record, target, paced, zone, gridTarget }: UnscoredRep,
  outcome: RepOutcome,
): Float64Array | null {
  if (outcome.kind !== 'scored') return null;
  const grid = blockGrid(gridTarget);
  const stretch = paced ? pacedStretch(target) : null;
  if (stretch !== null) return pacedRepCurve(record, outcome, grid, stretch);
  if (zone === null) return target === gridTarget ? repCurve(record.brake, outcome, grid) : null;
  return zone.call === null ? liveRepCurve(record, outcome, zone, grid) : null;
}
