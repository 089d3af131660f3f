import { idOfFile } from '../profile/id-of-file.ts';
import type { ProfileReading } from '../profile/profile-reading.ts';
import { readProfile } from '../profile/read-profile.ts';
import type { CarFile, CarFileKeys } from './car-file.ts';
import { brokenCarRules } from './car-rules.ts';
import { CAR_SCHEMA } from './car-schema.ts';

/**
 * The car file in a text, for whoever shows the problems one by one. Throws nothing.
 *
 * @param fileName with or without folders; without them and its ending it becomes the car's id
 */
export function checkCar(text: string, fileName: string): ProfileReading<CarFile> {
  const reading = readProfile<CarFileKeys>(text, CAR_SCHEMA, brokenCarRules);
  if (reading.kind === 'refused') return reading;
  return { kind: 'read', value: { ...reading.value, id: idOfFile(fileName) } };
}
