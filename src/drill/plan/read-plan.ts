import { idOfFile } from '../../profile/id-of-file.ts';
import { type ProfileProblem, problemOfFile } from '../../profile/profile-problem.ts';
import { readProfile } from '../../profile/read-profile.ts';
import type { PlanFile } from './plan-file.ts';
import { type KnownProfiles, unknownNames } from './plan-names.ts';
import { planOfFile } from './plan-of-file.ts';
import { brokenRules } from './plan-rules.ts';
import { PLAN_SCHEMA } from './plan-schema.ts';
import type { PracticePlan } from './practice-plan.ts';

/** A plan, or everything that is wrong with its file. */
type PlanReading =
  | { readonly kind: 'read'; readonly plan: PracticePlan }
  | { readonly kind: 'refused'; readonly problems: readonly ProfileProblem[] };

/**
 * The plan in the text of a YAML file, for whoever shows the problems one by one. Throws nothing.
 *
 * @param fileName with or without folders; without them and its ending it becomes the plan's id
 * @param known where names are to be checked too; null leaves them to whoever drives the plan
 */
export function checkPlan(
  text: string,
  fileName: string,
  known: KnownProfiles | null = null,
): PlanReading {
  const reading = readProfile<PlanFile>(text, PLAN_SCHEMA, (file) => [
    ...brokenRules(file),
    ...(known === null ? [] : unknownNames(file, known)),
  ]);
  if (reading.kind === 'refused') return reading;
  return { kind: 'read', plan: planOfFile(reading.value, idOfFile(fileName)) };
}

/**
 * The plan in the text of a YAML file.
 *
 * @throws Problem (exit code 1) that lists every problem of the file with line and column
 */
export function readPlan(text: string, fileName: string): PracticePlan {
  const reading = checkPlan(text, fileName);
  if (reading.kind === 'refused') throw problemOfFile(fileName, reading.problems);
  return reading.plan;
}
