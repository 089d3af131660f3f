import type { DrillModel } from './drill-model.ts';
import { isRevealed } from './rep-lines.ts';

/** First-of-day reps show no target before the last of them is over and its score may be seen. */
export function hidesTarget(model: DrillModel): boolean {
  const { block, stage } = model;
  if (block.phase !== 'first-of-day' || stage.kind === 'summary') return false;
  return !(stage.kind === 'after' && isRevealed(model, { ...stage, tag: stage.rep }));
}

/** During a rep that is not shown, the own trace, the bar and the error all stay away. */
export function hidesOwn({ stage, feedback }: DrillModel): boolean {
  return feedback !== 'shown' && UNDER_WAY.has(stage.kind);
}

const UNDER_WAY: ReadonlySet<DrillModel['stage']['kind']> = new Set([
  'ready',
  'braking',
  'rolling',
  'driving',
] as const);

/** The own trace is there to be seen: in a shown rep as it is drawn, else with the result. */
export function isOwnSeen(model: DrillModel): boolean {
  const { stage } = model;
  if (stage.kind === 'braking' || stage.kind === 'driving') return !hidesOwn(model);
  if (stage.kind !== 'after') return false;
  return stage.rep.feedback === 'shown' || isRevealed(model, { ...stage, tag: stage.rep });
}
