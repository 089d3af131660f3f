import { checkPlan } from '../drill/plan/check-plan.ts';
import type { KnownProfiles } from '../drill/plan/plan-names.ts';
import type { PracticePlan } from '../drill/plan/practice-plan.ts';
import { CAR_FILES } from './car-files.ts';
import { CORNER_FILES } from './corner-files.ts';
import { findProfile, listProfiles, type ProfileKind } from './profile-files.ts';
import { TARGET_FILES } from './target-files.ts';

/** Plans: bundled in profiles/plans, own ones in `<data-dir>/plans`. */
export const PLAN_FILES: ProfileKind<PracticePlan> = planFiles(null);

/** The same, with the names in a plan checked against what there is. */
export function planFiles(known: KnownProfiles | null): ProfileKind<PracticePlan> {
  return {
    noun: 'plan',
    folder: 'plans',
    check: (text, fileName) => checkPlan(text, fileName, known),
  };
}

/** The plan that the user names by id or path, its names checked. @throws Problem as `findProfile` does */
export async function findPlan(idOrPath: string, dataDir: string): Promise<PracticePlan> {
  return findProfile(planFiles(await knownProfiles(dataDir)), idOrPath, dataDir);
}

/** What a plan can name by id. A sheet with problems is known by its id, without variants. */
export async function knownProfiles(dataDir: string): Promise<KnownProfiles> {
  const [targets, cars, corners] = await Promise.all([
    listProfiles(TARGET_FILES, dataDir),
    listProfiles(CAR_FILES, dataDir),
    listProfiles(CORNER_FILES, dataDir),
  ]);
  return {
    targets: targets.map(({ id }) => id),
    cars: cars.map(({ id }) => id),
    corners: new Map(
      corners.map((entry) => [
        entry.id,
        entry.kind === 'read' ? entry.value.variants.map(({ name }) => name) : [],
      ]),
    ),
  };
}
