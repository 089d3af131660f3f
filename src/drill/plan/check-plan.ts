import { idOfFile } from '../../profile/id-of-file.ts';
import type { ProfileReading } from '../../profile/profile-reading.ts';
import { readProfile } from '../../profile/read-profile.ts';
import type { PlanFile } from './plan-file.ts';
import { type KnownProfiles, unknownNames } from './plan-names.ts';
import { planOfFile } from './plan-of-file.ts';
import { brokenRules } from './plan-rules.ts';
import { PLAN_SCHEMA } from './plan-schema.ts';
import type { PracticePlan } from './practice-plan.ts';

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
): ProfileReading<PracticePlan> {
  const reading = readProfile<PlanFile>(text, PLAN_SCHEMA, (file) => [
    ...brokenRules(file),
    ...(known === null ? [] : unknownNames(file, known)),
  ]);
  if (reading.kind === 'refused') return reading;
  return { kind: 'read', value: planOfFile(reading.value, idOfFile(fileName)) };
}
