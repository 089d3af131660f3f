import { idOfFile } from '../profile/id-of-file.ts';
import { type ProfileProblem, problemOfFile } from '../profile/profile-problem.ts';
import { readProfile } from '../profile/read-profile.ts';
import type { CarFile, CarFileKeys } from './car-file.ts';
import { brokenCarRules } from './car-rules.ts';
import { CAR_SCHEMA } from './car-schema.ts';

/** A car file, or everything that is wrong with it. */
export type CarReading =
  | { readonly kind: 'read'; readonly value: CarFile }
  | { readonly kind: 'refused'; readonly problems: readonly ProfileProblem[] };

/**
 * The car file in a text, for whoever shows the problems one by one. Throws nothing.
 *
 * @param fileName with or without folders; without them and its ending it becomes the car's id
 */
export function checkCar(text: string, fileName: string): CarReading {
  const reading = readProfile<CarFileKeys>(text, CAR_SCHEMA, brokenCarRules);
  if (reading.kind === 'refused') return reading;
  return { kind: 'read', value: { ...reading.value, id: idOfFile(fileName) } };
}

/**
 * The car file in the text of a YAML file; `buildCar` makes the car of it.
 *
 * @throws Problem (exit code 1) that lists every problem of the file with line and column
 */
export function readCar(text: string, fileName: string): CarFile {
  const reading = checkCar(text, fileName);
  if (reading.kind === 'refused') throw problemOfFile(fileName, reading.problems);
  return reading.value;
}
