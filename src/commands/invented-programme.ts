import type { DrillSetup } from '../drill/drill-setup.ts';
import type { InventedKind } from '../input/virtual/invented-practices.ts';
import { virtualRig } from '../input/virtual/virtual-rig.ts';
import { overTime } from '../target/over-time.ts';
import type { Target } from '../target/target.ts';
import { findCorner } from './corner-files.ts';
import { carIn, DEFAULT_CAR } from './drill-subject.ts';
import { planSubject } from './plan-subject.ts';
import { type BuiltPlan, builtPlan } from './planned-setup.ts';
import { findTarget } from './target-files.ts';
import { whatIsDrilled } from './what-is-drilled.ts';

const USUAL_TARGET = 'hairpin';
const OTHER_TARGET = 'right-angle';
const CORNER = 'kiln-hairpin';
const PLAN = 'maintenance';

/** What one practice of an invented history is about. */
export interface InventedSubject extends Pick<DrillSetup, 'target' | 'live'> {
  readonly plan: BuiltPlan | null;
  /** Of how many reps a block has; a plan has its own. */
  readonly blocks: number;
  readonly reps: number;
  /** What is driven in the blocks of all, for a tally. */
  readonly name: string;
}

/** What is driven in an invented history, by kind of practice. */
export type InventedProgramme = Readonly<Partial<Record<InventedKind, InventedSubject>>> & {
  readonly usual: InventedSubject;
};

/**
 * The practices of an invented history, built.
 *
 * @param target the only one to be driven; null for the hairpin with another target, a corner and a plan beside it
 * @throws Problem for a target that is not there
 */
export async function inventedProgramme(
  target: string | null,
  dataDir: string,
): Promise<InventedProgramme> {
  const over = async (id: string): Promise<Target> => overTime(await findTarget(id, dataDir));
  const usual = ofTarget(await over(target ?? USUAL_TARGET), 2);
  if (target !== null) return { usual };
  const rig = virtualRig();
  const subject = await carIn(
    await findCorner(CORNER, dataDir),
    { car: DEFAULT_CAR, variant: null },
    dataDir,
  );
  const car = whatIsDrilled(subject, { stintS: null, callShare: 0 }, rig);
  const plan = builtPlan(await planSubject(PLAN, dataDir), rig);
  return {
    usual,
    'other target': ofTarget(await over(OTHER_TARGET), 1),
    'live car': { ...car, plan: null, blocks: 1, reps: 6, name: `${CORNER} in ${DEFAULT_CAR}` },
    plan: {
      target: plan.zones[0]!.target,
      live: null,
      plan,
      blocks: 0,
      reps: 35,
      name: `plan ${PLAN}`,
    },
  };
}

function ofTarget(target: Target, blocks: number): InventedSubject {
  return { target, live: null, plan: null, blocks, reps: 10, name: target.id };
}
