import type { LivePlan } from '../../live/live-view.ts';
import { targetPlan } from '../../live/target-plan.ts';
import type { DerivedTarget } from '../../target/derive/derive-target.ts';
import { ggLimits } from '../../target/derive/gg-limits.ts';
import { type GripTrace, targetGripTrace } from '../../target/derive/grip-trace.ts';
import type { Target } from '../../target/target.ts';
import { type SteeringCoupling, targetCoupling } from '../diagnosis/steering-coupling.ts';
import type { DoneRep, DrillModel } from '../drill-model.ts';
import { isRevealed } from '../rep-lines.ts';
import type { RestPictures } from './rest-pictures.ts';

/** Of the rep just finished once its result may be read, or of the reps of a block; null where nothing is to be shown. */
export function restPicturesOf(model: DrillModel): RestPictures | null {
  const reps = repsToShow(model);
  const target = reps[0]?.gridTarget;
  if (target === undefined) return null;
  const derived = derivedOf(model);
  const grips = reps.flatMap(({ drawn }) => drawn?.grip ?? []);
  const couplings = reps.flatMap(({ drawn }) => drawn?.coupling ?? []);
  if (grips.length + couplings.length === 0) return null;
  return {
    gg: derived === null || grips.length === 0 ? null : { ...targetGrip(derived), own: grips },
    coupling: couplings.length === 0 ? null : { target: couplingOf(model, target), own: couplings },
    above: derived === null || model.stage.kind !== 'summary' ? null : blockPlan(derived, grips),
  };
}

/** Of a block only reps of one target, without a late call, lie over each other. */
function repsToShow(model: DrillModel): readonly DoneRep[] {
  const { stage, block } = model;
  if (stage.kind === 'summary') {
    const usual = block.done.filter(({ call, drawn }) => call === null && drawn !== null);
    const isOne = usual.every(({ gridTarget }) => gridTarget === usual[0]?.gridTarget);
    return isOne ? usual.toReversed() : [];
  }
  if (stage.kind !== 'after') return [];
  const isThis = (rep: DoneRep): boolean => rep.tag.number === stage.rep.number;
  return block.done.filter((rep) => isThis(rep) && rep.drawn !== null && isRevealed(model, rep));
}

/** What was to be driven: after a late call what it asked for, of a block what it was prepared for. */
function derivedOf({ live, stage }: DrillModel): DerivedTarget | null {
  if (live === null) return null;
  const { derived, call } = live.zone;
  return stage.kind === 'summary' ? (call?.before ?? derived) : derived;
}

function couplingOf({ live, stage }: DrillModel, target: Target): SteeringCoupling | null {
  return knownCoupling(live === null || stage.kind === 'summary' ? target : live.zone.target);
}

function blockPlan(derived: DerivedTarget, grips: readonly GripTrace[]): LivePlan {
  const plan = knownPlan(derived);
  const own = grips.map(({ placeM }) => ({ sM: placeM[0]!, kind: 'brake point' }) as const);
  return { ...plan, marks: [...plan.marks, ...own].toSorted((a, b) => a.sM - b.sM) };
}

/** A view is asked for a thousand times a second, and what follows from a target never changes. */
function once<Key extends object, Value>(of: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    const found = known.get(key) ?? { value: of(key) };
    known.set(key, found);
    return found.value;
  };
}

const targetGrip: (derived: DerivedTarget) => Omit<NonNullable<RestPictures['gg']>, 'own'> = once(
  (derived) => ({
    limits: ggLimits(derived),
    target: targetGripTrace(derived),
  }),
);

const knownCoupling: (target: Target) => SteeringCoupling | null = once(targetCoupling);
const knownPlan: (derived: DerivedTarget) => LivePlan = once(targetPlan);
