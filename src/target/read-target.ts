import { idOfFile } from '../profile/id-of-file.ts';
import { type ProfileReading, soundValue } from '../profile/profile-reading.ts';
import { readProfile } from '../profile/read-profile.ts';
import { validatorOf } from '../profile/validator-of.ts';
import { buildTarget } from './build-target.ts';
import { specOfFile } from './spec-of-file.ts';
import type { Target } from './target.ts';
import type { TargetFile } from './target-file.ts';
import { brokenRules } from './target-rules.ts';
import { TARGET_SCHEMA } from './target-schema.ts';

/** A target with the keys of its file, or everything that is wrong with it. */
type TargetReading = ProfileReading<Target> &
  ({ readonly kind: 'read'; readonly file: TargetFile } | { readonly kind: 'refused' });

/**
 * The target in the text of a YAML file, for whoever shows the problems one by one. Throws nothing.
 *
 * @param fileName with or without folders; without them and its ending it becomes the target's id
 */
export function checkTarget(text: string, fileName: string): TargetReading {
  const specOf = (file: TargetFile) => specOfFile(file, idOfFile(fileName));
  const reading = readProfile<TargetFile>(text, TARGET_SCHEMA, (file) =>
    brokenRules(file, specOf(file)),
  );
  if (reading.kind === 'refused') return reading;
  return { kind: 'read', file: reading.value, value: buildTarget(specOf(reading.value)) };
}

/**
 * The target in the text of a YAML file.
 *
 * @param fileName for the id and for messages
 * @throws Problem (exit code 1) that lists every problem of the file with line and column
 */
export function readTarget(text: string, fileName: string): Target {
  return soundValue(checkTarget(text, fileName), fileName);
}

/**
 * The target that the keys of a file say, without the text: what `readTarget` makes of them, and far sooner.
 *
 * @returns null where it would refuse them
 */
export function targetOfKeys(file: TargetFile, id: string): Target | null {
  if (!validatorOf(TARGET_SCHEMA)(file)) return null;
  const spec = specOfFile(file, id);
  return brokenRules(file, spec).length > 0 ? null : buildTarget(spec);
}
